/** Parts, wires and pins by their names and numbers, for whoever looks for one. */
import { once } from '../../circuit/index.ts';
import type { Model } from '../../machine/index.ts';
import { partName, targetName } from '../words/names.ts';
import { sentence } from '../words/words.ts';

const MOST = 12;

interface Entry {
  target: string;
  name: string;
  /** As it is printed: `k1`, `206d`, `x3 3`. */
  number: string;
}

const targetsOf = once((model: Model): Entry[] => {
  const { book } = model;
  const entry = (target: string, name: string): Entry => ({
    target,
    name,
    number: target
      .replace(/^[WX]:/, '')
      .replaceAll('.', ' ')
      .toLowerCase(),
  });
  const named = (target: string) => entry(target, sentence(targetName(model, target)));
  return [
    ...book.parts.map((p) => entry(p.id, partName(book, p.id))),
    ...book.wires.map((w) => named(`W:${w.id}`)),
    ...book.connectors.flatMap((c) => c.pins.map((p) => named(`X:${c.id}.${p.pin}`))),
  ];
});

/** Numbers that are the text come first: `K1` before `K10` and `K11`. */
export function findTargets(model: Model, text: string): { target: string; name: string }[] {
  const wanted = text.trim().toLowerCase().replaceAll(/[.,]/g, ' ').replaceAll(/\s+/g, ' ');
  if (wanted === '') return [];
  const printed = wanted.replace(/^wire /, '').replace(' pin ', ' ');
  const rank = ({ name, number }: Entry): number => {
    if (number === printed) return 0;
    if (number.startsWith(printed)) return 1;
    const low = name.toLowerCase();
    return low.startsWith(wanted) ? 2 : low.includes(wanted) ? 3 : 9;
  };
  return targetsOf(model)
    .map((entry) => ({ entry, rank: rank(entry) }))
    .filter((x) => x.rank < 9)
    .sort((a, b) => a.rank - b.rank)
    .slice(0, MOST)
    .map(({ entry: { target, name } }) => ({ target, name }));
}

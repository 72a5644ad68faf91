/** Parts, wires and pins by their names, for whoever looks for one. */
import type { Model } from '../../machine/index.ts';
import { partName, targetName } from '../words/names.ts';

const MOST = 12;
const lists = new WeakMap<Model, { target: string; name: string }[]>();

function targetsOf(model: Model): { target: string; name: string }[] {
  const known = lists.get(model);
  if (known !== undefined) return known;
  const { book } = model;
  const named = (target: string, name: string) => ({ target, name });
  const list = [
    ...book.parts.map((p) => named(p.id, partName(book, p.id))),
    ...book.wires.map((w) => named(`W:${w.id}`, targetName(model, `W:${w.id}`))),
    ...book.connectors.flatMap((c) =>
      c.pins.map((p) => named(`X:${c.id}.${p.pin}`, targetName(model, `X:${c.id}.${p.pin}`))),
    ),
  ];
  lists.set(model, list);
  return list;
}

/** Names that begin with the text come first: `K1` before `K10` and `K11`. */
export function findTargets(model: Model, text: string): { target: string; name: string }[] {
  const wanted = text.trim().toLowerCase().replaceAll(/[.,]/g, ' ').replaceAll(/\s+/g, ' ');
  if (wanted === '') return [];
  const rank = (name: string): number => {
    const low = name.toLowerCase();
    const bare = low.replace(/^wire /, '').replace(' pin ', ' ');
    if (low === wanted || bare.split(' ')[0] === wanted) return 0;
    if (low.startsWith(wanted) || bare.startsWith(wanted)) return 1;
    return low.includes(wanted) ? 2 : 9;
  };
  return targetsOf(model)
    .map((entry) => ({ entry, rank: rank(entry.name) }))
    .filter((x) => x.rank < 9)
    .sort((a, b) => a.rank - b.rank)
    .slice(0, MOST)
    .map((x) => x.entry);
}

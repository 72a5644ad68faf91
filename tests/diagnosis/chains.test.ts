/** Resistance in one row without a branch: wherever it sits, the operator notices the same. */
import { expect, test } from 'vitest';
import { Chains } from '../../src/diagnosis/chains.ts';
import { type SuspectFamily, suspectFamilies } from '../../src/diagnosis/index.ts';
import { Rig, tryOut } from '../../src/job/index.ts';
import { hobbinModel } from '../support/hobbin.ts';

const model = hobbinModel();
const chains = new Chains(model);
const EVERY = 9;

/** Families at their worst, by the name that they share: those of more than one place. */
function shared(kind: RegExp): SuspectFamily[][] {
  const byRow = new Map<string, SuspectFamily[]>();
  for (const family of suspectFamilies(model)) {
    const worst = family.severities[family.severities.length - 1] ?? 0;
    const name = chains.nameOf(family, worst);
    if (!kind.test(name)) continue;
    byRow.set(name, [...(byRow.get(name) ?? []), family]);
  }
  return [...byRow.values()].filter((families) => new Set(families.map((f) => f.at)).size > 1);
}

const noticedWith = (family: SuspectFamily, key: string): string[] => {
  const worst = family.severities[family.severities.length - 1] ?? 0;
  const rig = Rig.arriving(model, family.faults(worst), {});
  return tryOut(rig, { controls: [['key', key]], seen: [], missing: [] }).codes;
};

test('an open circuit at either end of a row', () => {
  const all = shared(/^row \d+ null$/);
  expect(all.length).toBeGreaterThan(50);
  const told = all.filter((_, i) => i % EVERY === 0).map((families) => [families[0], families[families.length - 1]]);
  for (const [first, last] of told) {
    expect(noticedWith(last, 'start'), `${first.id} and ${last.id}`).toEqual(noticedWith(first, 'start'));
  }
});

test.each([
  ['a short to metal', /^touch \d+ GND/, 5, 1],
  ['a short to another wire', /^touch \d+ \d+ /, 15, EVERY],
  ['a leak', /^leak /, 30, EVERY],
])('%s at either end of a run of wire', (_, kind, least, every) => {
  const all = shared(kind);
  expect(all.length).toBeGreaterThan(least);
  for (const families of all.filter((_, i) => i % every === 0)) {
    const [first, last] = [families[0], families[families.length - 1]];
    expect(noticedWith(last, 'start'), `${first.id} and ${last.id}`).toEqual(noticedWith(first, 'start'));
  }
});

test('a touch before a fuse is not the touch behind it', () => {
  const byWire = (id: string) => suspectFamilies(model).find((f) => f.at === `W:${id}` && f.mode === 'short_gnd');
  // F10 stands between the key's crank output and 202.
  const [before, behind] = [byWire('201A'), byWire('202A')];
  expect(before).toBeDefined();
  expect(behind).toBeDefined();
  if (before !== undefined && behind !== undefined) expect(chains.nameOf(before, 0)).not.toBe(chains.nameOf(behind, 0));
});

test('what is neither resistance in a row nor a touch stands for itself', () => {
  const others = suspectFamilies(model).filter((family) =>
    family
      .faults(family.severities[0] ?? 0)
      .some((fault) => fault.changes.some(({ kind }) => kind !== 'series' && kind !== 'chafe')),
  );
  const names = others.map((family) => chains.nameOf(family, family.severities[0] ?? 0));
  expect(others.length).toBeGreaterThan(100);
  expect(new Set(names).size).toBe(others.length);
});

test('a branch ends a row', () => {
  const { elements, plan } = model;
  const touching = new Map<number, number>();
  for (const node of [...plan.edgeA, ...plan.edgeB]) touching.set(node, (touching.get(node) ?? 0) + 1);
  const open = suspectFamilies(model).find((family) => {
    const [change] = family.faults(0).flatMap((fault) => fault.changes);
    const element = change.kind === 'series' ? elements[model.elementIndex.get(change.element) ?? 0] : undefined;
    return element !== undefined && (touching.get(element.a) ?? 0) > 2 && (touching.get(element.b) ?? 0) > 2;
  });
  expect(open).toBeDefined();
  if (open === undefined) return;
  const name = chains.nameOf(open, 0);
  const same = suspectFamilies(model).filter((family) => chains.nameOf(family, 0) === name);
  expect(new Set(same.map((family) => family.at))).toEqual(new Set([open.at]));
});

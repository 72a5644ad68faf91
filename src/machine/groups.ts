/** Elements of a model sorted by what can move them. Worked out once. */
import { once } from '../circuit/index.ts';
import { type Guard, type Law, leavesOf } from '../parts/index.ts';
import { compileGuard, type Test } from './guard.ts';
import type { Model } from './model.ts';
import { watchedNodes } from './watched.ts';

export interface Groups {
  /** Conditions of the elements; null where there is none. */
  readonly tests: readonly (Test | null)[];
  /** Their law and condition never move. */
  readonly fixed: readonly number[];
  /** They go with states and controls alone; and those of them that go with each region, and with each control. */
  readonly switched: readonly number[];
  readonly byRegion: readonly (readonly number[])[];
  readonly byControl: readonly (readonly number[])[];
  /** All others: with speed, charge or temperature too. */
  readonly moving: readonly number[];
  readonly batteries: readonly number[];
  readonly excitations: readonly number[];
  readonly alternators: readonly number[];
  /** Edges that may drive a current. */
  readonly sources: readonly number[];
  /** Nodes that some guard, the flywheel or a regulator looks at. */
  readonly watched: readonly number[];
}

const SOURCE_KINDS: readonly Law['kind'][] = ['source', 'battery', 'motor', 'alternator'];
const SWITCHED_KINDS: readonly Law['kind'][] = ['contact', 'source'];

export const groupsOf: (model: Model) => Groups = once(sortOut);

function sortOut(model: Model): Groups {
  const { elements } = model;
  const all = elements.map((_, i) => i);
  const ofKind = (...kinds: Law['kind'][]): number[] => all.filter((i) => kinds.includes(elements[i].law.kind));
  const isFixed = (i: number) => elements[i].law.kind === 'resistance' && elements[i].when === undefined;
  const isSwitched = (i: number) => {
    const { law, when } = elements[i];
    return SWITCHED_KINDS.includes(law.kind) && (when === undefined || standsWithStates(when));
  };
  const excitations = ofKind('excitation');
  const switched = all.filter((i) => !isFixed(i) && isSwitched(i));
  const namesIn = (i: number): string[] => {
    const leaves = leavesOf(elements[i].when ?? { all: [] });
    return leaves.flatMap((leaf) =>
      'region' in leaf ? [`region ${leaf.region}`] : 'control' in leaf ? [`control ${leaf.control}`] : [],
    );
  };
  const by = (names: readonly string[]) => names.map((name) => switched.filter((i) => namesIn(i).includes(name)));
  return {
    tests: elements.map(({ when }) => (when === undefined ? null : compileGuard(model, when))),
    fixed: all.filter(isFixed),
    switched,
    byRegion: by(model.regions.map(({ id }) => `region ${id}`)),
    byControl: by(model.book.controls.map(({ id }) => `control ${id}`)),
    moving: all.filter((i) => !isFixed(i) && !isSwitched(i)),
    batteries: ofKind('battery'),
    excitations,
    alternators: ofKind('alternator'),
    sources: [...ofKind(...SOURCE_KINDS), ...excitations.map((_, k) => elements.length + k)],
    watched: watchedNodes(model),
  };
}

const standsWithStates = (guard: Guard): boolean =>
  leavesOf(guard).every((leaf) => 'region' in leaf || 'control' in leaf);

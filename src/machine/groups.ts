/** Elements of a model sorted by what can move them. Worked out once. */
import { type Guard, type Law, leavesOf } from '../parts/index.ts';
import { compileGuard, type Test } from './guard.ts';
import type { Model } from './model.ts';
import { watchedNodes } from './watched.ts';

export interface Groups {
  /** Conditions of the elements; null where there is none. */
  readonly tests: readonly (Test | null)[];
  /** Their law and condition never move. */
  readonly fixed: readonly number[];
  /** They go with states and controls alone. */
  readonly switched: readonly number[];
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

const kept = new WeakMap<Model, Groups>();

export function groupsOf(model: Model): Groups {
  const known = kept.get(model);
  if (known !== undefined) return known;
  const groups = sortOut(model);
  kept.set(model, groups);
  return groups;
}

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
  return {
    tests: elements.map(({ when }) => (when === undefined ? null : compileGuard(model, when))),
    fixed: all.filter(isFixed),
    switched: all.filter((i) => !isFixed(i) && isSwitched(i)),
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

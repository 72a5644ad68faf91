/** Which nodes of a machine are looked at after every solution: the others wait until a meter touches them. */
import { REFERENCE } from '../circuit/index.ts';
import { type Guard, type Law, leavesOf, type PointId, type RegionSpec } from '../parts/index.ts';
import type { ObservableSpec } from './book.ts';

/** As much of a model as its tables need. */
interface Tables {
  readonly book: { readonly observables: readonly ObservableSpec[] };
  readonly regions: readonly RegionSpec[];
  readonly elements: readonly { id: string; a: number; b: number; law: Law; when?: Guard | undefined }[];
  readonly elementIndex: ReadonlyMap<string, number>;
  readonly pointIndex: ReadonlyMap<PointId, number>;
}

const WATCHED_KINDS: readonly Law['kind'][] = ['battery', 'motor', 'alternator', 'excitation'];

/** Conditions of all transitions, observations and elements, taken apart. */
export function conditionsOf({ book, regions, elements }: Tables) {
  const guards = [
    ...regions.flatMap((region) => region.transitions.map((t) => t.when)),
    ...book.observables.flatMap(({ when, between }) => (between === undefined ? [when] : [when, between])),
    ...elements.flatMap(({ when }) => (when === undefined ? [] : [when])),
  ];
  return guards.flatMap(leavesOf);
}

/** Nodes that some condition, the flywheel, a battery or a regulator looks at. */
export function watchedNodes(tables: Tables): number[] {
  const { regions, elements, elementIndex, pointIndex } = tables;
  const nodes = new Set<number>();
  // What is not in the book is another's complaint: a part on a bench has no cab to be seen from.
  const seePoint = (point: string): void => {
    nodes.add(pointIndex.get(point) ?? REFERENCE);
  };
  const seeElement = (id: string): void => {
    const element = elements[elementIndex.get(id) ?? -1];
    if (element !== undefined) nodes.add(element.a).add(element.b);
  };
  for (const condition of conditionsOf(tables)) {
    if ('volts' in condition) condition.volts.forEach(seePoint);
    else if ('amps' in condition) condition.amps.forEach(seeElement);
  }
  for (const { afterMs } of regions.flatMap((region) => region.transitions)) {
    if (typeof afterMs === 'object') seeElement(afterMs.element);
  }
  for (const { id, law } of elements) {
    if (WATCHED_KINDS.includes(law.kind)) seeElement(id);
    if (law.kind === 'alternator') seePoint(law.sense);
  }
  nodes.delete(REFERENCE);
  return [...nodes];
}

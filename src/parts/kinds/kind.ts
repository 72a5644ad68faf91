import type { Change, FaultFamily } from '../change.ts';
import type { ElementSpec, PartSpec, RegionSpec } from '../spec.ts';

export type PartOf<K extends PartSpec['kind']> = Extract<PartSpec, { kind: K }>;

/** What one kind of part brings: elements for the network, regions for the statechart, ways to fail. */
export interface Kind<P extends PartSpec> {
  elements(part: P): ElementSpec[];
  regions(part: P): RegionSpec[];
  faults(part: P): FaultFamily[];
}

/** Elements of a part by their local names, with their ids. */
export const elementId = (part: string, element: string): string => `${part}.${element}`;

/** Parts with no logic of their own. */
export type Plain = PartOf<'switch'> | PartOf<'general'> | PartOf<'controller'>;

/** One family of a mode: what it does at each degree, in what share of the mode's cases. */
export interface Way {
  share: number;
  severities: readonly number[];
  changes: (degree: number) => Change[];
}

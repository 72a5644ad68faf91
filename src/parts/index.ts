/** The door of the parts: what a book's part brings to the network, to the statechart and to the list of suspects. */
import type { FaultFamily } from './change.ts';
import { fuse } from './kinds/fuse.ts';
import { plain } from './kinds/plain.ts';
import { relay } from './kinds/relay.ts';
import { starter } from './kinds/starter.ts';
import { toldFaults, untold } from './kinds/told.ts';
import type { ElementSpec, PartSpec, RegionSpec } from './spec.ts';

export interface PartContent {
  elements: ElementSpec[];
  regions: RegionSpec[];
  faults: FaultFamily[];
}

export function contentOf(part: PartSpec): PartContent {
  const told = toldFaults(part);
  switch (part.kind) {
    case 'fuse':
      return {
        elements: fuse.elements(part),
        regions: fuse.regions(part),
        faults: [...fuse.faults(untold(part)), ...told],
      };
    case 'relay':
      return {
        elements: relay.elements(part),
        regions: relay.regions(part),
        faults: [...relay.faults(untold(part)), ...told],
      };
    case 'starter':
      return {
        elements: starter.elements(part),
        regions: starter.regions(part),
        faults: [...starter.faults(untold(part)), ...told],
      };
    case 'switch':
    case 'controller':
    case 'general':
      return {
        elements: plain.elements(part),
        regions: plain.regions(part),
        faults: [...plain.faults(untold(part)), ...told],
      };
  }
}

export * from './change.ts';
export { leavesOf } from './leaves.ts';
export * from './spec.ts';

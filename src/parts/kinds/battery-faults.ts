/** How a battery fails, from its own volts and ohms. Null for a part that has no cell. */
import type { Change } from '../change.ts';
import { elementId, type Plain, type Way } from './kind.ts';

/** Internal resistance rises as a battery empties: ohms for each volt below full. Estimate. */
const FLAT_OHMS_PER_VOLT = 0.01;
/** Ohms of a worn one, as multiples of a sound one's: from twice to twenty times. Estimate. */
const WORN_TIMES = [15 / 7, 25 / 7, 40 / 7, 10, 150 / 7];
/** Volts below full: BCI table, 12.65 full to 11.89 empty; then cells gone. */
const FLAT_VOLTS = [0.3, 0.45, 0.6, 0.76, 1.5, 2.5];

type Changes = (element: string, volts: number, ohms: number, degree: number) => Change;

function ofCell(part: Plain, severities: readonly number[], change: Changes): Way[] | null {
  for (const { id, law } of part.elements) {
    if (law.kind !== 'battery') continue;
    const { openVolts, ohms } = law;
    const changes = (degree: number): Change[] => [change(elementId(part.id, id), openVolts, ohms, degree)];
    return [{ share: 1, severities, changes }];
  }
  return null;
}

export const batteryModes = {
  weak: (part: Plain) =>
    ofCell(part, WORN_TIMES, (element, _, ohms, times) => ({ kind: 'battery', element, ohms: ohms * times })),
  discharged: (part: Plain) =>
    ofCell(part, FLAT_VOLTS, (element, openVolts, ohms, below) => ({
      kind: 'battery',
      element,
      openVolts: openVolts - below,
      ohms: ohms + FLAT_OHMS_PER_VOLT * below,
    })),
};

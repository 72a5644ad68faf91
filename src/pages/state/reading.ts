/** What stands on the display: the last reading, for as long as nothing that it depends on was changed. */
import type { Action, Attempt, Display, Record } from '../../job/index.ts';

/** These leave the circuit, the leads and the meter as they are. */
const HARMLESS: readonly Action['do'][] = [
  'mark',
  'note',
  'writeUp',
  'ask',
  'precaution',
  'look',
  'codes',
  'helper',
  'verify',
];

export const canRead = ({ bench }: Attempt): boolean =>
  bench.leads.red !== null && bench.leads.black !== null && (bench.instrument === 'lamp' || bench.dial !== 'off');

export interface Shown {
  display: Display;
  record: Record;
}

/** These turn the display to something else, held or not. */
const TURNED: readonly Action['do'][] = ['dial', 'instrument'];

/** With `held` the last reading stands, whatever was done since with the leads or the machine. */
export function shownOn(attempt: Attempt, held = false): Shown | null {
  for (let i = attempt.records.length - 1; i >= 0; i--) {
    const record = attempt.records[i];
    if (record.seen.display !== undefined) return { display: record.seen.display, record };
    const { do: kind } = record.entry.action;
    if (held ? TURNED.includes(kind) : !HARMLESS.includes(kind)) return null;
  }
  return null;
}

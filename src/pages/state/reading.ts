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

export function shownOn(attempt: Attempt): Shown | null {
  for (let i = attempt.records.length - 1; i >= 0; i--) {
    const record = attempt.records[i];
    if (record.seen.display !== undefined) return { display: record.seen.display, record };
    if (!HARMLESS.includes(record.entry.action.do)) return null;
  }
  return null;
}

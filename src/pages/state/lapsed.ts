/** Precautions that were in place and that something else than the student's own hand has taken away since. */
import type { Record } from '../../job/index.ts';

export function hasLapsed(records: readonly Record[], id: string): boolean {
  const last = records.findLast(
    ({ before, after }) => before.precautions.includes(id) !== after.precautions.includes(id),
  );
  return last !== undefined && !last.after.precautions.includes(id) && last.entry.action.do !== 'precaution';
}

/** Precautions that were in place and that something else than the student's own hand has taken away since. */
import type { Record } from '../../job/index.ts';

/** What was done when a precaution went; null while it stands, was never set, or was taken back by hand. */
export function lapsedBy(records: readonly Record[], id: string): Record | null {
  const last = records.findLast(
    ({ before, after }) => before.precautions.includes(id) !== after.precautions.includes(id),
  );
  return last !== undefined && !last.after.precautions.includes(id) && last.entry.action.do !== 'precaution'
    ? last
    : null;
}

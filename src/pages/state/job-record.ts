/** How far a student has come with a job: what the board and the work order show of the attempts at it. */
import type { StoredAttempt } from '../../storage/attempts.ts';

export interface JobRecord {
  /** Attempts that count, the open one among them. */
  count: number;
  latest: StoredAttempt;
  /** The last one that was closed, with its result once that is worked out. */
  closed: StoredAttempt | null;
}

/** Null while the job has not been taken; trials from the middle of another attempt don't count. */
export function jobRecord(attempts: readonly StoredAttempt[], jobId: string): JobRecord | null {
  const own = attempts
    .filter((a) => a.jobId === jobId && !a.practice)
    .sort((a, b) => (a.takenAt < b.takenAt ? 1 : a.takenAt > b.takenAt ? -1 : 0));
  const [latest] = own;
  if (latest === undefined) return null;
  return { count: own.length, latest, closed: own.find((a) => a.ended) ?? null };
}

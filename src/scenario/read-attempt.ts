/** Reads an attempt's log: its shape only. Its replay tells whether it is true. */
import type { Log } from '../job/index.ts';
import { problemsOf } from './issue.ts';
import type { Problem } from './problem.ts';
import { attemptFile } from './schema-attempt.ts';

export type AttemptResult = { ok: true; log: Log } | { ok: false; problems: Problem[] };

export function readAttempt(file: string, value: unknown): AttemptResult {
  const parsed = attemptFile.safeParse(value);
  return parsed.success
    ? { ok: true, log: parsed.data }
    : { ok: false, problems: problemsOf(file, value, parsed.error.issues) };
}

/** A log as a file: written for download, read back with a clear word on what is wrong with it. */
import type { Log } from '../job/index.ts';
import { type AttemptResult, readAttempt } from '../scenario/read-attempt.ts';

export const logText = (log: Log): string => `${JSON.stringify(log, null, 1)}\n`;

/** Shape only; what the actions claim is proved by replaying them. */
export function readLog(file: string, text: string): AttemptResult {
  try {
    return readAttempt(file, JSON.parse(text));
  } catch {
    const expected = 'a file in JSON';
    return { ok: false, problems: [{ file, path: '', code: 'not-json', found: text.slice(0, 40), expected }] };
  }
}

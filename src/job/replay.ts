/** A log read back: replayed on the same book and job, and compared entry by entry with what it claims. */
import type { Model } from '../machine/index.ts';
import { Attempt, bookHash, isRefusal } from './attempt.ts';
import { canonical } from './canonical.ts';
import { ENGINE_VERSION, hashOf, LOG_VERSION, type Log } from './log.ts';
import type { JobSpec } from './spec.ts';

export interface Difference {
  /** Path in the log: `header.job`, `entries[4].seen.display`. */
  path: string;
  code: 'other-engine' | 'other-book' | 'other-job' | 'version' | 'refused' | 'differs' | 'broken-chain';
  found: string;
  expected: string;
}

export interface Replay {
  attempt: Attempt;
  differences: Difference[];
}

/** Replays every action. The attempt goes as far as the log can be followed. */
export function replay(model: Model, job: JobSpec, log: Log): Replay {
  const attempt = new Attempt(model, job, log.header.seed);
  const differences = headerDifferences(model, job, log);
  for (const [i, entry] of log.entries.entries()) {
    const result = attempt.act(entry.action);
    if (isRefusal(result)) {
      differences.push({
        path: `entries[${i}].action`,
        code: 'refused',
        found: entry.action.do,
        expected: result.code,
      });
      break;
    }
    const parts = ['timeMs', 'tenths', 'price', 'seen', 'previous', 'hash'] as const;
    for (const part of parts) {
      const [found, expected] = [canonical(entry[part]), canonical(result.entry[part])];
      const code = part === 'previous' || part === 'hash' ? 'broken-chain' : 'differs';
      if (found !== expected) differences.push({ path: `entries[${i}].${part}`, code, found, expected });
    }
  }
  return { attempt, differences };
}

function headerDifferences(model: Model, job: JobSpec, log: Log): Difference[] {
  const { header } = log;
  const rows: [path: string, code: Difference['code'], found: string | number, expected: string | number][] = [
    ['header.version', 'version', header.version, LOG_VERSION],
    ['header.engine', 'other-engine', header.engine, ENGINE_VERSION],
    ['header.book', 'other-book', header.book, bookHash(model)],
    ['header.job', 'other-job', header.job, hashOf(job)],
  ];
  return rows
    .filter(([, , found, expected]) => found !== expected)
    .map(([path, code, found, expected]) => ({ path, code, found: String(found), expected: String(expected) }));
}

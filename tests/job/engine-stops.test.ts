/** Whoever turns a running engine off hears it stop; where none ran there is nothing to hear. */
import { expect, test } from 'vitest';
import { work, workedAt } from './at-work.ts';

const STARTED = 'walk BATT; operate iso 1; walk CDASH; with chocks; with helperClear; operate key start 3000';

test('the key to off stops an engine that runs, and that is heard once', () => {
  const attempt = workedAt('job-02', STARTED);
  expect(attempt.records.at(-1)?.seen.codes).toContain('runs');
  expect(work(attempt, 'operate key off').seen.codes).toContain('stops');
  expect(work(attempt, 'operate key run').seen.codes).not.toContain('stops');
  expect(work(attempt, 'operate key off').seen.codes).not.toContain('stops');
});

test('an engine that runs on is not said to stop', () => {
  const attempt = workedAt('job-02', STARTED);
  expect(work(attempt, 'operate lights head').seen.codes).not.toContain('stops');
});

test('without its pump fuse it dies, in whatever is done while it does', () => {
  const attempt = workedAt('job-02', `${STARTED}; walk ENGL; with clothing; open AC5; pull F32`);
  work(attempt, 'look ENGL');
  expect(attempt.records.slice(-2).flatMap((r) => r.seen.codes)).toContain('stops');
});

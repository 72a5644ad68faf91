import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('a key held for an hour', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 4).action = { do: 'operate', control: 'key', value: 'start', holdMs: 3_600_000 };
  });
  expect(problems).toEqual([
    {
      file: 'attempt.json',
      path: 'entries[4].action.holdMs',
      code: 'out-of-range',
      found: '3600000',
      expected: 'at most 60000',
    },
  ]);
});

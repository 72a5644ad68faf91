import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('a hash that is none', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 4).hash = 'abc';
  });
  expect(problems).toEqual([
    {
      file: 'attempt.json',
      path: 'entries[4].hash',
      code: 'wrong-form',
      found: '"abc"',
      expected: 'text like /^[0-9a-f]{64}$/',
    },
  ]);
});

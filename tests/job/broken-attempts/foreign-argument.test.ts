import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('an action with an argument of another', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 1).action = { do: 'read', zone: 'BATT' };
  });
  expect(problems).toEqual([
    {
      file: 'attempt.json',
      path: 'entries[1].action.zone',
      code: 'unknown-key',
      found: '"zone"',
      expected: 'only keys that the schema has',
    },
  ]);
});

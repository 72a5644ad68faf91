import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a part stuck in a state that it does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'faults', 0).changes = [{ kind: 'stuck', region: 'K1', state: 'mad' }];
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'faults[0].changes[0].state',
      code: 'unknown-state',
      found: '"mad"',
      expected: 'a state of hobbin-45',
    },
  ]);
});

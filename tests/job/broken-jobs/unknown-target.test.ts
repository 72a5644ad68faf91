import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a fault at a target that the book does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'faults', 0).at = 'W:999Z';
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'faults[0].at',
      code: 'unknown-target',
      found: '"W:999Z"',
      expected: 'a target of hobbin-45',
    },
  ]);
});

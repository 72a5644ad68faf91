import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a chafe of a wire that the book does not have', () => {
  const problems = problemsOfBroken('job-03', (job) => {
    at(job, 'faults', 0, 'changes', 0).wire = '999Z';
  });
  expect(problems).toEqual([
    {
      file: 'job-03.json',
      path: 'faults[0].changes[0].wire',
      code: 'unknown-wire',
      found: '"999Z"',
      expected: 'a wire of hobbin-45',
    },
  ]);
});

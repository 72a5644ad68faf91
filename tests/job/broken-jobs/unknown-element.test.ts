import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a fault in an element that the book does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'faults', 0, 'changes', 0).element = 'W:999Z';
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'faults[0].changes[0].element',
      code: 'unknown-element',
      found: '"W:999Z"',
      expected: 'an element of hobbin-45',
    },
  ]);
});

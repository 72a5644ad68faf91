import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a sign under a cover that the book does not have', () => {
  const problems = problemsOfBroken('job-06', (job) => {
    at(job, 'signs', 0).under = 'AC99';
  });
  expect(problems).toEqual([
    {
      file: 'job-06.json',
      path: 'signs[0].under',
      code: 'unknown-access',
      found: '"AC99"',
      expected: 'an access of hobbin-45',
    },
  ]);
});

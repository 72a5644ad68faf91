import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a sign at a place that the book does not have', () => {
  const problems = problemsOfBroken('job-06', (job) => {
    at(job, 'signs', 0).at = 'X99';
  });
  expect(problems).toEqual([
    {
      file: 'job-06.json',
      path: 'signs[0].at',
      code: 'unknown-target',
      found: '"X99"',
      expected: 'a target of hobbin-45',
    },
  ]);
});

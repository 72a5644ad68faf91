import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a cause at a target that the book does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'causes', 0).at = 'K99';
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'causes[0].at',
      code: 'unknown-target',
      found: '"K99"',
      expected: 'a target of hobbin-45',
    },
  ]);
});

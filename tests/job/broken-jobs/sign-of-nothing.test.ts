import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a sign of a target that the book does not have', () => {
  const problems = problemsOfBroken('job-06', (job) => {
    at(job, 'signs', 0).of = 'X:X99.1';
  });
  expect(problems).toEqual([
    {
      file: 'job-06.json',
      path: 'signs[0].of',
      code: 'unknown-target',
      found: '"X:X99.1"',
      expected: 'a target of hobbin-45',
    },
  ]);
});

import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a sign behind a plug that the book does not have', () => {
  const problems = problemsOfBroken('job-06', (job) => {
    at(job, 'signs', 0).parted = 'X99';
  });
  expect(problems).toEqual([
    {
      file: 'job-06.json',
      path: 'signs[0].parted',
      code: 'unknown-part',
      found: '"X99"',
      expected: 'a part of hobbin-45',
    },
  ]);
});

import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test("a machine that is not this book's", () => {
  const problems = problemsOfBroken('job-05', (job) => {
    job.machine = 'other-20';
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'machine',
      code: 'unknown-machine',
      found: '"other-20"',
      expected: 'a machine of hobbin-45',
    },
  ]);
});

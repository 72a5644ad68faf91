import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test('an ending that is none', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    job.ending = 'went-home';
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'ending',
      code: 'not-allowed',
      found: '"went-home"',
      expected: '"repaired", "no-fault", "cannot-duplicate", "not-safe" or "handed-on"',
    },
  ]);
});

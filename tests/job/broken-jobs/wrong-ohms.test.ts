import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a resistance below nothing', () => {
  const problems = problemsOfBroken('job-10', (job) => {
    at(job, 'faults', 0, 'changes', 0).ohms = -1;
  });
  expect(problems).toEqual([
    {
      file: 'job-10.json',
      path: 'faults[0].changes[0].ohms',
      code: 'out-of-range',
      found: '-1',
      expected: 'more than 0',
    },
  ]);
});

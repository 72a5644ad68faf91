import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test('a fault that does not bring the complaint', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    job.faults = [];
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'complaint[0]',
      code: 'complaint-not-there',
      found: 'the machine as it arrives does not show it',
      expected: 'the complaint on arrival',
    },
  ]);
});

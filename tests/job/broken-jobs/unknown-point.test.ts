import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a chafe on a point that the book does not have', () => {
  const problems = problemsOfBroken('job-03', (job) => {
    at(job, 'faults', 0, 'changes', 0).to = 'GND99.L';
  });
  expect(problems).toEqual([
    {
      file: 'job-03.json',
      path: 'faults[0].changes[0].to',
      code: 'unknown-point',
      found: '"GND99.L"',
      expected: 'a point of hobbin-45',
    },
  ]);
});

import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a state that the region does not have', () => {
  const problems = problemsOfBroken('job-03', (job) => {
    at(job, 'arrival').regions = { F10: 'melted' };
  });
  expect(problems).toEqual([
    {
      file: 'job-03.json',
      path: 'arrival.regions.F10',
      code: 'unknown-state',
      found: '"melted"',
      expected: 'a state of hobbin-45',
    },
  ]);
});

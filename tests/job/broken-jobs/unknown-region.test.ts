import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a region on arrival that the book does not have', () => {
  const problems = problemsOfBroken('job-03', (job) => {
    at(job, 'arrival').regions = { F99: 'blown' };
  });
  expect(problems).toEqual([
    {
      file: 'job-03.json',
      path: 'arrival.regions.F99',
      code: 'unknown-region',
      found: '"F99"',
      expected: 'a region of hobbin-45',
    },
  ]);
});

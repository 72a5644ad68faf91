import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a quantity on arrival that the book does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'arrival').quantities = { mood: 1 };
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'arrival.quantities.mood',
      code: 'unknown-quantity',
      found: '"mood"',
      expected: 'a quantity of hobbin-45',
    },
  ]);
});

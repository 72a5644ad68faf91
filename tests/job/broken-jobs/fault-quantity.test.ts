import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a fault in a quantity that the book does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'faults', 0).changes = [{ kind: 'quantity', quantity: 'mood', value: 1 }];
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'faults[0].changes[0].quantity',
      code: 'unknown-quantity',
      found: '"mood"',
      expected: 'a quantity of hobbin-45',
    },
  ]);
});

import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a part stuck that the book does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'faults', 0).changes = [{ kind: 'stuck', region: 'K99', state: 'on' }];
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'faults[0].changes[0].region',
      code: 'unknown-region',
      found: '"K99"',
      expected: 'a region of hobbin-45',
    },
  ]);
});

import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test('a key that the schema does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    job.hint = 'Look at the loom.';
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'hint',
      code: 'unknown-key',
      found: '"hint"',
      expected: 'only keys that the schema has',
    },
  ]);
});

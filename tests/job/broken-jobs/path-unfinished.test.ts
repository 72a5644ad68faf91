import { expect, test } from 'vitest';
import { type Json, problemsOfBroken } from './broken-job.ts';

test('a way that does not end', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    (job.path as Json[]).pop();
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'path',
      code: 'path-unfinished',
      found: 'precaution',
      expected: 'finish with repaired',
    },
  ]);
});

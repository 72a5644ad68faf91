import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a sign in a zone that the book does not have', () => {
  const problems = problemsOfBroken('job-06', (job) => {
    at(job, 'signs', 0).zone = 'CELLAR';
  });
  expect(problems).toEqual([
    {
      file: 'job-06.json',
      path: 'signs[0].zone',
      code: 'unknown-zone',
      found: '"CELLAR"',
      expected: 'a zone of hobbin-45',
    },
  ]);
});

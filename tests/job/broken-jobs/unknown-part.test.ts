import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test('a usual wrong swap of a part that the book does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    job.wrongSwap = 'K99';
  });
  expect(problems).toEqual([
    { file: 'job-05.json', path: 'wrongSwap', code: 'unknown-part', found: '"K99"', expected: 'a part of hobbin-45' },
  ]);
});

import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a complaint of something that the book cannot notice', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'complaint', 0).missing = ['starts'];
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'complaint[0].missing[0]',
      code: 'unknown-observable',
      found: '"starts"',
      expected: 'an observable of hobbin-45',
    },
  ]);
});

import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test('a complaint of nothing', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    job.complaint = [];
  });
  expect(problems).toEqual([
    { file: 'job-05.json', path: 'complaint', code: 'out-of-range', found: '[]', expected: 'at least 1 entries' },
  ]);
});

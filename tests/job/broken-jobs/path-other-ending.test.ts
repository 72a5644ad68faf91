import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test('a way that ends otherwise than the job', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    job.ending = 'no-fault';
  });
  expect(problems).toEqual([
    { file: 'job-05.json', path: 'path', code: 'path-unfinished', found: 'finish', expected: 'finish with no-fault' },
  ]);
});

import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test('no complaint at all', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    delete job.complaint;
  });
  expect(problems).toEqual([
    { file: 'job-05.json', path: 'complaint', code: 'missing', found: 'nothing', expected: 'array' },
  ]);
});

import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test('no lesson', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    delete job.lesson;
  });
  expect(problems).toEqual([
    { file: 'job-05.json', path: 'lesson', code: 'missing', found: 'nothing', expected: 'string' },
  ]);
});

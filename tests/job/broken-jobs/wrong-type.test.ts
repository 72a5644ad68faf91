import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('hours as text', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'workOrder').hours = 'many';
  });
  expect(problems).toEqual([
    { file: 'job-05.json', path: 'workOrder.hours', code: 'wrong-type', found: '"many"', expected: 'number' },
  ]);
});

import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a complaint with a control that the book does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'complaint', 0).controls = [['ignition', 'start']];
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'complaint[0].controls[0][0]',
      code: 'unknown-control',
      found: '"ignition"',
      expected: 'a control of hobbin-45',
    },
  ]);
});

import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a complaint with a position that the control does not have', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'complaint', 0).controls = [['key', 'sideways']];
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'complaint[0].controls[0][1]',
      code: 'unknown-position',
      found: '"sideways"',
      expected: 'a position of hobbin-45',
    },
  ]);
});

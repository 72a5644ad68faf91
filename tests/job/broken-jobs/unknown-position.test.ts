import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a position that the control does not have', () => {
  const problems = problemsOfBroken('job-02', (job) => {
    at(job, 'arrival').controls = { iso: 'half' };
  });
  expect(problems).toEqual([
    {
      file: 'job-02.json',
      path: 'arrival.controls.iso',
      code: 'unknown-position',
      found: '"half"',
      expected: 'a position of hobbin-45',
    },
  ]);
});

import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a control on arrival that the book does not have', () => {
  const problems = problemsOfBroken('job-02', (job) => {
    at(job, 'arrival').controls = { ignition: '0' };
  });
  expect(problems).toEqual([
    {
      file: 'job-02.json',
      path: 'arrival.controls.ignition',
      code: 'unknown-control',
      found: '"ignition"',
      expected: 'a control of hobbin-45',
    },
  ]);
});

import { expect, test } from 'vitest';
import { type Json, problemsOfBroken, stepOf } from './broken-job.ts';

test('a way whose repair is not the cure', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    const path = job.path as Json[];
    path.splice(stepOf(job, { do: 'repair' }), 1);
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'complaint[0]',
      code: 'complaint-stays',
      found: 'still there after the path',
      expected: 'a machine without the complaint',
    },
  ]);
});

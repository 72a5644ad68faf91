import { expect, test } from 'vitest';
import { type Json, problemsOfBroken, stepOf } from './broken-job.ts';

test('a way through a cover that was never opened', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    const path = job.path as Json[];
    path.splice(stepOf(job, { do: 'open', access: 'AC3' }), 1);
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'path[9]',
      code: 'path-refused',
      found: 'covered AC3',
      expected: 'an action that can be done here',
    },
  ]);
});

import { expect, test } from 'vitest';
import { type Json, problemsOfBroken, stepOf } from './broken-job.ts';

test('a way that cranks without chocks', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    const path = job.path as Json[];
    path.splice(stepOf(job, { do: 'precaution', id: 'chocks' }), 1);
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'path[2]',
      code: 'path-unsafe',
      found: 'crank-chocks without chocks',
      expected: 'every precaution in place',
    },
    {
      file: 'job-05.json',
      path: 'path[12]',
      code: 'path-unsafe',
      found: 'crank-chocks without chocks',
      expected: 'every precaution in place',
    },
    {
      file: 'job-05.json',
      path: 'path[23]',
      code: 'path-unsafe',
      found: 'open:AC6 without chocks',
      expected: 'every precaution in place',
    },
    {
      file: 'job-05.json',
      path: 'path[36]',
      code: 'path-unsafe',
      found: 'crank-chocks without chocks',
      expected: 'every precaution in place',
    },
  ]);
});

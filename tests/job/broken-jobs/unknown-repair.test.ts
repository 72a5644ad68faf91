import { expect, test } from 'vitest';
import { at, problemsOfBroken } from './broken-job.ts';

test('a cure that is no repair of the book', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    at(job, 'faults', 0).cures = ['pray'];
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'faults[0].cures[0]',
      code: 'unknown-repair',
      found: '"pray"',
      expected: 'a repair of hobbin-45',
    },
  ]);
});

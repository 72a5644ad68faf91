import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test.each([5, 0, 1.5, '1', null])('a band that is none: %j', (band) => {
  const problems = problemsOfBroken('job-05', (job) => {
    job.band = band;
  });
  expect(problems).toEqual([
    { file: 'job-05.json', path: 'band', code: 'not-allowed', found: JSON.stringify(band), expected: '1, 2, 3 or 4' },
  ]);
});

test('a band that is missing', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    delete job.band;
  });
  expect(problems).toEqual([
    { file: 'job-05.json', path: 'band', code: 'missing', found: 'nothing', expected: '1, 2, 3 or 4' },
  ]);
});

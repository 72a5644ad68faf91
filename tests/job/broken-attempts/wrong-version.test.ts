import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('a version that we do not know', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'header').version = 2;
  });
  expect(problems).toEqual([
    { file: 'attempt.json', path: 'header.version', code: 'not-allowed', found: '2', expected: '1' },
  ]);
});

import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('a time that is no whole millisecond', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 2).timeMs = 1.5;
  });
  expect(problems).toEqual([
    { file: 'attempt.json', path: 'entries[2].timeMs', code: 'wrong-type', found: '1.5', expected: 'a whole number' },
  ]);
});

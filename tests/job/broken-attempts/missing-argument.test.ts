import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('an action without its argument', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 1).action = { do: 'walk' };
  });
  expect(problems).toEqual([
    { file: 'attempt.json', path: 'entries[1].action.zone', code: 'missing', found: 'nothing', expected: 'string' },
  ]);
});

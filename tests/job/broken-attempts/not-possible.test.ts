import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { firstDifference } from './broken-attempt.ts';

test('an action that could not be done there', () => {
  const difference = firstDifference((log) => {
    at(log, 'entries', 2).action = { do: 'pull', part: 'K2' };
  });
  expect(difference).toEqual({ path: 'entries[2].action', code: 'refused', found: 'pull', expected: 'not-here' });
});

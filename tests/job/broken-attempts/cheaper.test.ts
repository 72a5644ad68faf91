import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { firstDifference } from './broken-attempt.ts';

test('an action that cost less than it does', () => {
  const difference = firstDifference((log) => {
    at(log, 'entries', 1).tenths = 0;
  });
  expect(difference).toEqual({ path: 'entries[1].tenths', code: 'differs', found: '0', expected: '20' });
});

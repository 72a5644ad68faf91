import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { firstDifference } from './broken-attempt.ts';

test('the hash of another job', () => {
  const difference = firstDifference((log) => {
    at(log, 'header').job = '0'.repeat(64);
  });
  expect(difference).toEqual({
    path: 'header.job',
    code: 'other-job',
    found: '0'.repeat(64),
    expected: expect.stringMatching(/^"?[0-9a-f]{64}"?$/),
  });
});

import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { firstDifference } from './broken-attempt.ts';

test('a hash that does not follow', () => {
  const difference = firstDifference((log) => {
    at(log, 'entries', 2).hash = '0'.repeat(64);
  });
  expect(difference).toEqual({
    path: 'entries[2].hash',
    code: 'broken-chain',
    found: `"${'0'.repeat(64)}"`,
    expected: expect.stringMatching(/^"?[0-9a-f]{64}"?$/),
  });
});

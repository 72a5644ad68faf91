import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { firstDifference } from './broken-attempt.ts';

test('a previous hash that is not the one before', () => {
  const difference = firstDifference((log) => {
    at(log, 'entries', 2).previous = '0'.repeat(64);
  });
  expect(difference).toEqual({
    path: 'entries[2].previous',
    code: 'broken-chain',
    found: `"${'0'.repeat(64)}"`,
    expected: expect.stringMatching(/^"?[0-9a-f]{64}"?$/),
  });
});

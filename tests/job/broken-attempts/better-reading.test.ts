import { expect, test } from 'vitest';
import { at, type Json } from '../broken-jobs/broken-job.ts';
import { firstDifference } from './broken-attempt.ts';

test('a reading that the machine does not give', () => {
  const difference = firstDifference((log) => {
    const entries = log.entries as Json[];
    const reading = entries.findIndex((entry) => (entry.seen as Json).display !== undefined);
    at(entries, reading, 'seen', 'display').text = '0.004';
  });
  expect(difference).toEqual({
    path: expect.stringMatching(/^entries\[\d+\]\.seen$/),
    code: 'differs',
    found: expect.stringContaining('"display":{"text":"0.004","unit":"V"}'),
    expected: expect.stringMatching(/"display":\{"text":"12\.\d\d","unit":"V"\}/),
  });
});

import { expect, test } from 'vitest';
import { ENGINE_VERSION } from '../../../src/job/index.ts';
import { at } from '../broken-jobs/broken-job.ts';
import { firstDifference } from './broken-attempt.ts';

test('another engine', () => {
  const difference = firstDifference((log) => {
    at(log, 'header').engine = '0.0.0';
  });
  expect(difference).toEqual({ path: 'header.engine', code: 'other-engine', found: '0.0.0', expected: ENGINE_VERSION });
});

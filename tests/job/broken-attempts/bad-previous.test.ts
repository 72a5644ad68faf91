import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('a previous hash in capitals', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 4).previous = 'A'.repeat(64);
  });
  expect(problems).toEqual([
    {
      file: 'attempt.json',
      path: 'entries[4].previous',
      code: 'wrong-form',
      found: '"AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"',
      expected: 'text like /^[0-9a-f]{64}$/',
    },
  ]);
});

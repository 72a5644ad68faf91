import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('an entry with a sentence beside it', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 2).remark = 'I was sure.';
  });
  expect(problems).toEqual([
    {
      file: 'attempt.json',
      path: 'entries[2].remark',
      code: 'unknown-key',
      found: '"remark"',
      expected: 'only keys that the schema has',
    },
  ]);
});

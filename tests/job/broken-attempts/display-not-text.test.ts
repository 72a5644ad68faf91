import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('a display that is a number', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 2).seen = { display: { text: 12.6, unit: 'V' }, codes: [] };
  });
  expect(problems).toEqual([
    {
      file: 'attempt.json',
      path: 'entries[2].seen.display.text',
      code: 'wrong-type',
      found: '12.6',
      expected: 'string',
    },
  ]);
});

import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('a note longer than a page', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 1).action = { do: 'note', text: 'x'.repeat(2001) };
  });
  expect(problems).toEqual([
    {
      file: 'attempt.json',
      path: 'entries[1].action.text',
      code: 'out-of-range',
      found: '"xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx…',
      expected: 'at most 2000 characters',
    },
  ]);
});

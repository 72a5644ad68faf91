import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('an entry without what was seen', () => {
  const problems = problemsOfBroken((log) => {
    delete at(log, 'entries', 2).seen;
  });
  expect(problems).toEqual([
    { file: 'attempt.json', path: 'entries[2].seen', code: 'missing', found: 'nothing', expected: 'object' },
  ]);
});

import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-attempt.ts';

test('a log without its entries', () => {
  const problems = problemsOfBroken((log) => {
    delete log.entries;
  });
  expect(problems).toEqual([
    { file: 'attempt.json', path: 'entries', code: 'missing', found: 'nothing', expected: 'array' },
  ]);
});

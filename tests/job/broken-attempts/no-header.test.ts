import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-attempt.ts';

test('a log without its header', () => {
  const problems = problemsOfBroken((log) => {
    delete log.header;
  });
  expect(problems).toEqual([
    { file: 'attempt.json', path: 'header', code: 'missing', found: 'nothing', expected: 'object' },
  ]);
});

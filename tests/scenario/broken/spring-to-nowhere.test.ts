import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a control that springs back to a position it has not', () => {
  const book = new Edit();
  book.record('machine.json', 'controls', 'key').springs = { start: 'on' };
  expect(book.problems()).toContainEqual({
    file: 'machine.json',
    path: `${book.path('machine.json', 'controls', 'key')}.springs.start`,
    code: 'unknown-value',
    found: 'on',
    expected: 'one of off, acc, run, start',
  });
});

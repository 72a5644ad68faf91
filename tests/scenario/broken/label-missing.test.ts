import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a position of a control without a name', () => {
  const book = new Edit();
  book.record('machine.json', 'controls', 'lever').labels = { F: 'forward', N: 'neutral' };
  expect(book.problems()).toContainEqual({
    file: 'machine.json',
    path: `${book.path('machine.json', 'controls', 'lever')}.labels`,
    code: 'missing',
    found: 'nothing',
    expected: 'what the value R is called',
  });
});

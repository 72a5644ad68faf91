import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a pin that is probed from a side that it has not', () => {
  const book = new Edit();
  book.pin('X1', '2').backProbe = 'b';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.pinPath('X1', '2')}.backProbe`,
    code: 'not-allowed',
    found: '"b"',
    expected: 'boolean or "a"',
  });
});

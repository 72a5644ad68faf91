import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a pin in which no wire ends', () => {
  const book = new Edit();
  book.wire('206B').from = 'SP5';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.pinPath('X1', '2')}.b`,
    code: 'empty-pin',
    found: 'X1.2.b',
    expected: 'one wire that ends there',
  });
});

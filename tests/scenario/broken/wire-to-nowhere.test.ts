import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a wire to a terminal that no part has', () => {
  const book = new Edit();
  book.wire('206D').to = 'K1.99';
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '206D')}.to`,
    code: 'unknown-point',
    found: 'K1.99',
    expected: 'a point of this book',
  });
});

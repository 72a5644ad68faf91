import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a pin with a wire that does not exist', () => {
  const book = new Edit();
  book.pin('X1', '2').a = '206Z';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.pinPath('X1', '2')}.a`,
    code: 'unknown-wire',
    found: '206Z',
    expected: 'a wire of this book',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a pin that names another wire than the one in it', () => {
  const book = new Edit();
  book.pin('X1', '2').a = '121C';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.pinPath('X1', '2')}.a`,
    code: 'pin-disagrees',
    found: '121C',
    expected: '206A, the wire that ends at X1.2.a',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('two wires in one cavity', () => {
  const book = new Edit();
  book.wire('216A').to = 'X10.8.a';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.pinPath('X10', '8')}.a`,
    code: 'pin-used-twice',
    found: expect.stringContaining('216A'),
    expected: 'one wire that ends there',
  });
});

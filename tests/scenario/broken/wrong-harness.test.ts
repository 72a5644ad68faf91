import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a wire of the other harness on this side', () => {
  const book = new Edit();
  book.wire('206B').harness = 'EN';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.pinPath('X1', '2')}.b`,
    code: 'wrong-harness',
    found: '206B is of EN',
    expected: 'a wire of harness FR on side b',
  });
});

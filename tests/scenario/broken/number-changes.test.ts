import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a wire number that changes through a connector', () => {
  const book = new Edit();
  book.wire('206B').number = '209';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.pinPath('X1', '2')}.b`,
    code: 'number-changes',
    found: '206B is number 209',
    expected: 'a wire of number 206',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a length in words', () => {
  const book = new Edit();
  book.wire('206D').metres = '2 m';
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '206D')}.metres`,
    code: 'wrong-type',
    found: '"2 m"',
    expected: 'number',
  });
});

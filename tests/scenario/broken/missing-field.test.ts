import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a wire without its length', () => {
  const book = new Edit();
  delete book.wire('206D').metres;
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '206D')}.metres`,
    code: 'missing',
    found: 'nothing',
    expected: 'number',
  });
});

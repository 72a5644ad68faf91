import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a splice of two wires', () => {
  const book = new Edit();
  book.wire('216A').from = 'K1.86';
  expect(book.problems()).toContainEqual({
    file: 'splices.json',
    path: `${book.path('splices.json', 'splices', 'SP6')}.wires`,
    code: 'splice-too-small',
    found: '206C, 206D',
    expected: 'three wires or more that end there',
  });
});

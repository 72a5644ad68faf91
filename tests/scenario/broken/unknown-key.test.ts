import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a key that the schema has not', () => {
  const book = new Edit();
  book.wire('206D').color = 'VT';
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '206D')}.color`,
    code: 'unknown-key',
    found: '"color"',
    expected: 'only keys that the schema has',
  });
});

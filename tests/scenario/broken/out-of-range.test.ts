import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a resistance below zero', () => {
  const book = new Edit();
  book.wire('206D').ohms = -0.01;
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '206D')}.ohms`,
    code: 'out-of-range',
    found: '-0.01',
    expected: 'more than 0',
  });
});

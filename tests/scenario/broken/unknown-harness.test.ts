import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a wire of a harness that the machine has not', () => {
  const book = new Edit();
  book.wire('208A').harness = 'ZZ';
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '208A')}.harness`,
    code: 'unknown-harness',
    found: 'ZZ',
    expected: 'a harness of this book',
  });
});

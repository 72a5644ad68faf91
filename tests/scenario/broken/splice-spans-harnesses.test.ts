import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a splice between two harnesses', () => {
  const book = new Edit();
  book.wire('216A').harness = 'FR';
  expect(book.problems()).toContainEqual({
    file: 'splices.json',
    path: `${book.path('splices.json', 'splices', 'SP6')}.harness`,
    code: 'splice-spans-harnesses',
    found: '216A is of FR',
    expected: 'wires of EN only',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a part in a place that the machine has not', () => {
  const book = new Edit();
  book.record('parts-cab.json', 'parts', 'R2').zone = 'ATTIC';
  expect(book.problems()).toContainEqual({
    file: 'parts-cab.json',
    path: `${book.path('parts-cab.json', 'parts', 'R2')}.zone`,
    code: 'unknown-zone',
    found: 'ATTIC',
    expected: 'a zone of this book',
  });
});

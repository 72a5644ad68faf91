import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a replaceable part without a price', () => {
  const book = new Edit();
  book.record('parts-cab.json', 'parts', 'R2').price = null;
  expect(book.problems()).toContainEqual({
    file: 'parts-cab.json',
    path: `${book.path('parts-cab.json', 'parts', 'R2')}.price`,
    code: 'missing',
    found: 'null',
    expected: 'a number, since the part is replaceable',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a part whose id looks like a connector', () => {
  const book = new Edit();
  book.record('parts-cab.json', 'parts', 'P1').id = 'X99';
  expect(book.problems()).toContainEqual({
    file: 'parts-cab.json',
    path: `${book.path('parts-cab.json', 'parts', 'X99')}.id`,
    code: 'id-of-connector',
    found: 'X99',
    expected: 'an id that does not look like a connector or a splice',
  });
});

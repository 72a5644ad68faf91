import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('two parts of one id', () => {
  const book = new Edit();
  book.record('parts-cab.json', 'parts', 'R3').id = 'K1';
  expect(book.problems()).toContainEqual({
    file: 'parts-relays.json',
    path: `${book.path('parts-relays.json', 'parts', 'K1')}.id`,
    code: 'duplicate-id',
    found: 'K1',
    expected: 'an id that no other part has',
  });
});

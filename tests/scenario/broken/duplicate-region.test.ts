import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a region of a name that a relay has', () => {
  const book = new Edit();
  book.record('machine.json', 'regions', 'SPD').id = 'K1';
  expect(book.problems()).toContainEqual({
    file: 'machine.json',
    path: `${book.path('machine.json', 'regions', 'K1')}.id`,
    code: 'duplicate-id',
    found: 'K1',
    expected: 'an id that no other region has',
  });
});

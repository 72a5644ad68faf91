import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a region that begins in a state it has not', () => {
  const book = new Edit();
  book.record('machine.json', 'regions', 'SPD').initial = 'ajar';
  expect(book.problems()).toContainEqual({
    file: 'machine.json',
    path: `${book.path('machine.json', 'regions', 'SPD')}.initial`,
    code: 'unknown-state',
    found: 'ajar',
    expected: 'one of broken, whole',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a sign of a failure that the part has not', () => {
  const book = new Edit();
  book.record('parts-switches.json', 'parts', 'S5').signs = { melted: 'A puddle.' };
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: `${book.path('parts-switches.json', 'parts', 'S5')}.signs.melted`,
    code: 'unknown-mode',
    found: 'melted',
    expected: 'a mode among its failures',
  });
});

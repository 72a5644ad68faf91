import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a kind of part that nobody knows', () => {
  const book = new Edit();
  book.record('parts-cab.json', 'parts', 'R2').kind = 'magnet';
  expect(book.problems()).toContainEqual({
    file: 'parts-cab.json',
    path: `${book.path('parts-cab.json', 'parts', 'R2')}.kind`,
    code: 'not-allowed',
    found: '"magnet"',
    expected: expect.stringContaining('"fuse"'),
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a fuse that its wire cannot carry', () => {
  const book = new Edit();
  book.record('parts-fuses.json', 'parts', 'F10').ratingAmps = 25;
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '202D')}.ampacityAmps`,
    code: 'fuse-above-wire',
    found: 'F10 of 25 A',
    expected: 'a fuse of at most 16 A',
  });
});

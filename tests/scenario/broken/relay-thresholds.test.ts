import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a relay that lets go above its pull-in', () => {
  const book = new Edit();
  book.record('parts-relays.json', 'parts', 'K2').dropOutVolts = 8;
  expect(book.problems()).toContainEqual({
    file: 'parts-relays.json',
    path: `${book.path('parts-relays.json', 'parts', 'K2')}.dropOutVolts`,
    code: 'out-of-range',
    found: '8',
    expected: 'less than the pull-in of 7.2 V',
  });
});

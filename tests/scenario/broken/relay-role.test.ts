import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a relay whose coil ends at a terminal that it has not', () => {
  const book = new Edit();
  book.record('parts-relays.json', 'parts', 'K2').coil = ['86', '84'];
  expect(book.problems()).toContainEqual({
    file: 'parts-relays.json',
    path: `${book.path('parts-relays.json', 'parts', 'K2')}.coil[1]`,
    code: 'unknown-terminal',
    found: '84',
    expected: 'a terminal of the part',
  });
});

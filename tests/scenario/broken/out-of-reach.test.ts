import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a harness that does not run where its wire ends', () => {
  const book = new Edit();
  book.record('machine.json', 'harnesses', 'HY').zones = ['FRONT'];
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '806C')}.from`,
    code: 'out-of-reach',
    found: 'X23.3.b in FRAME',
    expected: 'an end in FRONT, where harness HY runs',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a wire from place to place that cannot be taken off', () => {
  const book = new Edit();
  book.wire('103A').from = 'G1.+';
  book.record('parts-power.json', 'parts', 'BUS1').zone = 'ENGL';
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '103A')}.to`,
    code: 'not-separable',
    found: 'BATT to ENGL',
    expected: 'a connector between the two places',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a guard between 6 and 3 volts', () => {
  const book = new Edit();
  const regions = book.record('parts-a1.json', 'parts', 'A1').regions as { transitions: { when: object }[] }[];
  regions[2].transitions[0].when = { volts: ['A1.18', 'A1.3'], above: 6, below: 3 };
  expect(book.problems()).toContainEqual({
    file: 'parts-a1.json',
    path: `${book.path('parts-a1.json', 'parts', 'A1')}.regions[2].transitions[0].when`,
    code: 'empty-range',
    found: 'above 6, below 3',
    expected: 'above less than below',
  });
});

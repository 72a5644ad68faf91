import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a guard between points that the machine has not', () => {
  const book = new Edit();
  const regions = book.record('parts-a1.json', 'parts', 'A1').regions as { transitions: { when: object }[] }[];
  regions[2].transitions[0].when = { volts: ['A1.18', 'A1.99'], above: 6 };
  expect(book.problems()).toContainEqual({
    file: 'parts-a1.json',
    path: `${book.path('parts-a1.json', 'parts', 'A1')}.regions[2].transitions[0].when.volts[1]`,
    code: 'unknown-point',
    found: 'A1.99',
    expected: 'a point of this book',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a guard on a current that flows nowhere', () => {
  const book = new Edit();
  const regions = book.record('parts-a1.json', 'parts', 'A1').regions as { transitions: { when: object }[] }[];
  regions[2].transitions[0].when = { amps: ['A1.xx'], above: 6 };
  expect(book.problems()).toContainEqual({
    file: 'parts-a1.json',
    path: `${book.path('parts-a1.json', 'parts', 'A1')}.regions[2].transitions[0].when.amps[0]`,
    code: 'unknown-element',
    found: 'A1.xx',
    expected: 'an element of this book',
  });
});

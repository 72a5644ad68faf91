import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a guard on a region that nothing has', () => {
  const book = new Edit();
  const regions = book.record('parts-a1.json', 'parts', 'A1').regions as { transitions: { when: object }[] }[];
  regions[2].transitions[0].when = { any: [{ region: 'K99', is: ['on'] }] };
  expect(book.problems()).toContainEqual({
    file: 'parts-a1.json',
    path: `${book.path('parts-a1.json', 'parts', 'A1')}.regions[2].transitions[0].when.any[0].region`,
    code: 'unknown-region',
    found: 'K99',
    expected: 'a region of this book',
  });
});

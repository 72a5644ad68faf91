import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a guard that says neither above nor below', () => {
  const book = new Edit();
  const regions = book.record('parts-a1.json', 'parts', 'A1').regions as { transitions: { when: object }[] }[];
  regions[2].transitions[0].when = { volts: ['A1.18', 'A1.3'] };
  expect(book.problems()).toContainEqual({
    file: 'parts-a1.json',
    path: `${book.path('parts-a1.json', 'parts', 'A1')}.regions[2].transitions[0].when`,
    code: 'guard-without-bound',
    found: 'neither above nor below',
    expected: 'above, below or both',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a guard on a state that the region has not', () => {
  const book = new Edit();
  const regions = book.record('parts-a1.json', 'parts', 'A1').regions as { transitions: { when: object }[] }[];
  regions[2].transitions[0].when = { not: { region: 'K1', is: ['ajar'] } };
  expect(book.problems()).toContainEqual({
    file: 'parts-a1.json',
    path: `${book.path('parts-a1.json', 'parts', 'A1')}.regions[2].transitions[0].when.not.is[0]`,
    code: 'unknown-state',
    found: 'ajar',
    expected: 'one of off, on',
  });
});

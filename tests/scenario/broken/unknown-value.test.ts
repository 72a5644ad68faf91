import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a contact in a position that its control has not', () => {
  const book = new Edit();
  book.element('parts-switches.json', 'S2', 'run').when = { control: 'key', is: ['run', 'park'] };
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: `${book.elementPath('parts-switches.json', 'S2', 'run')}.when.is[1]`,
    code: 'unknown-value',
    found: 'park',
    expected: 'one of off, acc, run, start',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a guard that is none of the forms', () => {
  const book = new Edit();
  book.element('parts-switches.json', 'S2', 'run').when = { control: 'key', are: ['run'] };
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: `${book.elementPath('parts-switches.json', 'S2', 'run')}.when.is`,
    code: 'missing',
    found: 'nothing',
    expected: 'array',
  });
});

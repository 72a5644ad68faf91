import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a contact of a control that the machine has not', () => {
  const book = new Edit();
  book.element('parts-switches.json', 'S2', 'run').when = { control: 'clutch', is: ['in'] };
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: `${book.elementPath('parts-switches.json', 'S2', 'run')}.when.control`,
    code: 'unknown-control',
    found: 'clutch',
    expected: 'a control of this book',
  });
});

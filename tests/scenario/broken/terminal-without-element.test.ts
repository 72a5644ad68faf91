import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a terminal with nothing inside', () => {
  const book = new Edit();
  (book.record('parts-switches.json', 'parts', 'S5').terminals as string[]).push('3');
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: `${book.path('parts-switches.json', 'parts', 'S5')}.terminals[2]`,
    code: 'terminal-without-element',
    found: 'S5.3',
    expected: 'an element of the part that ends there',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('an element that ends at no terminal', () => {
  const book = new Edit();
  book.element('parts-switches.json', 'S5', 'on').b = 'S5.9';
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: `${book.elementPath('parts-switches.json', 'S5', 'on')}.b`,
    code: 'unknown-terminal',
    found: 'S5.9',
    expected: 'a terminal of this book',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a guard on a quantity that the book has not', () => {
  const book = new Edit();
  book.element('parts-switches.json', 'S2', 'run').when = { quantity: 'moon', above: 1 };
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: `${book.elementPath('parts-switches.json', 'S2', 'run')}.when.quantity`,
    code: 'unknown-quantity',
    found: 'moon',
    expected: 'a quantity of this book',
  });
});

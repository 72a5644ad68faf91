import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('an element that has nothing to do with its part', () => {
  const book = new Edit();
  Object.assign(book.element('parts-switches.json', 'S5', 'on'), { a: 'S7.1', b: 'S7.2' });
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: `${book.elementPath('parts-switches.json', 'S5', 'on')}`,
    code: 'foreign-element',
    found: 'S7.1 to S7.2',
    expected: 'an element that ends at S5',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a starter without a thick way to ground', () => {
  const book = new Edit();
  book.element('parts-power.json', 'M1', 'body').law = { kind: 'resistance', ohms: 10 };
  expect(book.problems()).toContainEqual({
    file: 'parts-power.json',
    path: `${book.elementPath('parts-power.json', 'M1', 'motor')}.b`,
    code: 'starter-ground',
    found: 'M1.31',
    expected: 'an unfused cable of 50 mm² or more to the battery',
  });
});

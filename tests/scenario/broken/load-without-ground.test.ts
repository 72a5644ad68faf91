import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a starter whose case is not grounded', () => {
  const book = new Edit();
  book.element('parts-power.json', 'M1', 'body').law = { kind: 'resistance', ohms: 10 };
  expect(book.problems()).toContainEqual({
    file: 'parts-power.json',
    path: `${book.elementPath('parts-power.json', 'M1', 'hold')}`,
    code: 'load-without-ground',
    found: 'M1.hold, M1.50 to M1.31',
    expected: 'a way back to the battery',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a plug that leads to a part it is not on', () => {
  const book = new Edit();
  book.pin('X9', '1').b = 'S5.1';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.pinPath('X9', '1')}.b`,
    code: 'wrong-device',
    found: 'S5.1',
    expected: 'a terminal of S4',
  });
});

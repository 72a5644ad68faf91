import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a pin that the housing has not', () => {
  const book = new Edit();
  book.record('connectors.json', 'connectors', 'X15').cavities = 1;
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.pinPath('X15', '2')}.pin`,
    code: 'beyond-cavities',
    found: '2',
    expected: 'a pin up to 1',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('one pin told twice', () => {
  const book = new Edit();
  book.pin('X1', '3').pin = '2';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: expect.stringMatching(/^connectors\[0\]\.pins\[2\]\.pin$/),
    code: 'duplicate-id',
    found: '2',
    expected: 'a pin that the connector has not yet',
  });
});

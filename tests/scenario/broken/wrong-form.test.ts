import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('an id with a dot in it', () => {
  const book = new Edit();
  book.wire('206D').id = '206.D';
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: expect.stringMatching(/^wires\[\d+\]\.id$/),
    code: 'wrong-form',
    found: '"206.D"',
    expected: expect.stringContaining('text like'),
  });
});

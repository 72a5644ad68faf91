import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a color code that IEC 60757 has not', () => {
  const book = new Edit();
  book.wire('206D').colour = 'XX';
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '206D')}.colour`,
    code: 'not-allowed',
    found: '"XX"',
    expected: expect.stringContaining('"BK", "BN"'),
  });
});

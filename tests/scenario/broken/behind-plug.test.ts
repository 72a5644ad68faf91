import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a wire that lands behind a plug', () => {
  const book = new Edit();
  book.wire('205A').to = 'S4.1';
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '205A')}.to`,
    code: 'behind-plug',
    found: 'S4.1',
    expected: "side a of the plug's pin, since the terminal has a plug",
  });
});

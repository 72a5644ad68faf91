import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a wire of more ohms than its copper has', () => {
  const book = new Edit();
  book.wire('206D').ohms = 0.5;
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '206D')}.ohms`,
    code: 'wrong-ohms',
    found: '0.5',
    expected: expect.stringMatching(/^0\.\d+ to 0\.\d+ for [\d.]+ m of [\d.]+ mm²$/),
  });
});

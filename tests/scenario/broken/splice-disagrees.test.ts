import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a splice that lists a wire too few', () => {
  const book = new Edit();
  book.record('splices.json', 'splices', 'SP1').wires = ['107B', '107C'];
  expect(book.problems()).toContainEqual({
    file: 'splices.json',
    path: `${book.path('splices.json', 'splices', 'SP1')}.wires`,
    code: 'wires-disagree',
    found: '107B, 107C',
    expected: '107B, 107C, 107D, the wires that end there',
  });
});

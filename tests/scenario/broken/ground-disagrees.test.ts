import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a stud that lists a wire which ends elsewhere', () => {
  const book = new Edit();
  book.record('grounds.json', 'grounds', 'GND7').wires = ['006A', '037F', '034E'];
  expect(book.problems()).toContainEqual({
    file: 'grounds.json',
    path: `${book.path('grounds.json', 'grounds', 'GND7')}.wires`,
    code: 'wires-disagree',
    found: '006A, 037F, 034E',
    expected: '006A, 037F, the wires that end there',
  });
});

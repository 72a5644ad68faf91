import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('two wires of one id', () => {
  const book = new Edit();
  book.list('wires.json', 'wires').push({ ...book.wire('206D') });
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `wires[${book.list('wires.json', 'wires').length - 1}].id`,
    code: 'duplicate-id',
    found: '206D',
    expected: 'an id that no other wire has',
  });
});

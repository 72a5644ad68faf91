import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a long lead from the starter stud without a fuse', () => {
  const book = new Edit();
  Object.assign(book.wire('304A'), { metres: 2, ohms: 0.0382 });
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '304A')}.from`,
    code: 'unfused-wire',
    found: '304A from M1.30',
    expected: 'a fuse between the battery and the wire',
  });
});

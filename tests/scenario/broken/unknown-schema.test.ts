import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a file that names no schema of a book', () => {
  const book = new Edit();
  book.file('wires.json').$schema = '../../schemas/cables.schema.json';
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: '$schema',
    code: 'unknown-schema',
    found: '"../../schemas/cables.schema.json"',
    expected: expect.stringContaining('wires, splices'),
  });
});

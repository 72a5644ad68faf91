import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a second machine file', () => {
  const book = new Edit();
  book.files['other.json'] = book.files['machine.json'];
  expect(book.problems()).toContainEqual({
    file: 'other.json',
    path: '',
    code: 'second-file',
    found: 'other.json',
    expected: 'one machine file in a book; machine.json is one',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a book without its limits', () => {
  const book = new Edit();
  delete book.files['limits.json'];
  expect(book.problems()).toContainEqual({
    file: '',
    path: '',
    code: 'missing-file',
    found: 'nothing',
    expected: 'a file with limits.schema.json as its $schema',
  });
});

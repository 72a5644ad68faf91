import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a fuse that the fuse list forgot', () => {
  const book = new Edit();
  book.file('limits.json').limits = book.list('limits.json', 'limits').filter((l) => l.where !== 'F10');
  expect(book.problems()).toContainEqual({
    file: 'parts-fuses.json',
    path: `${book.path('parts-fuses.json', 'parts', 'F10')}.id`,
    code: 'fuse-without-limit',
    found: 'F10',
    expected: 'a limit of kind fuse for it',
  });
});

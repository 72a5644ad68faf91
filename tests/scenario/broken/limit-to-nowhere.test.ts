import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a limit at a point that the machine has not', () => {
  const book = new Edit();
  book.list('limits.json', 'limits')[0].from = 'G9.+';
  expect(book.problems()).toContainEqual({
    file: 'limits.json',
    path: 'limits[0].from',
    code: 'unknown-point',
    found: 'G9.+',
    expected: 'a point of this book',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('an access step with a precaution that nobody told', () => {
  const book = new Edit();
  book.record('access.json', 'access', 'AC6').toOpen = ['engineStopped', 'crossedFingers'];
  expect(book.problems()).toContainEqual({
    file: 'access.json',
    path: `${book.path('access.json', 'access', 'AC6')}.toOpen[1]`,
    code: 'unknown-precaution',
    found: 'crossedFingers',
    expected: 'a precaution of this book',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a connector behind an access step that nobody told', () => {
  const book = new Edit();
  book.record('connectors.json', 'connectors', 'X3').access = 'AC99';
  expect(book.problems()).toContainEqual({
    file: 'connectors.json',
    path: `${book.path('connectors.json', 'connectors', 'X3')}.access`,
    code: 'unknown-access',
    found: 'AC99',
    expected: 'an access of this book',
  });
});

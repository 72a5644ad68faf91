import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a controller pin that the manual forgot', () => {
  const book = new Edit();
  (book.record('parts-a3.json', 'parts', 'A3').pins as object[]).pop();
  expect(book.problems()).toContainEqual({
    file: 'parts-a3.json',
    path: `${book.path('parts-a3.json', 'parts', 'A3')}.pins`,
    code: 'pin-not-described',
    found: '23',
    expected: 'a line for every terminal that is not hidden',
  });
});

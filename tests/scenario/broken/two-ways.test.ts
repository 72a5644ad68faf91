import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a precaution that stands in two ways', () => {
  const book = new Edit();
  book.record('precautions.json', 'precautions', 'keyOff').pulled = 'F32';
  expect(book.problems()).toContainEqual({
    file: 'precautions.json',
    path: `${book.path('precautions.json', 'precautions', 'keyOff')}.needs`,
    code: 'two-ways',
    found: '2 ways',
    expected: 'one of needs, pulled and lifted',
  });
});

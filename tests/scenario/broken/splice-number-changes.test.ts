import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a splice of two numbers', () => {
  const book = new Edit();
  delete book.record('splices.json', 'splices', 'SP6').branches;
  expect(book.problems()).toContainEqual({
    file: 'splices.json',
    path: `${book.path('splices.json', 'splices', 'SP6')}.wires`,
    code: 'number-changes',
    found: '206, 216',
    expected: 'one number, and others as branches',
  });
});

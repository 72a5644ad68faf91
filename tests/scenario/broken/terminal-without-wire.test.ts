import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a terminal that nothing reaches', () => {
  const book = new Edit();
  (book.record('parts-cab.json', 'parts', 'R2').terminals as string[]).push('S');
  (book.record('parts-cab.json', 'parts', 'R2').elements as object[]).push({
    id: 'shield',
    a: 'R2.S',
    b: 'R2.L',
    law: { kind: 'resistance', ohms: 1000 },
  });
  expect(book.problems()).toContainEqual({
    file: 'parts-cab.json',
    path: `${book.path('parts-cab.json', 'parts', 'R2')}.terminals[2]`,
    code: 'terminal-without-wire',
    found: 'R2.S',
    expected: 'a wire, a plug or another part there',
  });
});

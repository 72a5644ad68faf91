import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('an engine without a starter', () => {
  const book = new Edit();
  (book.file('machine.json').engine as { starter: string }).starter = 'M5';
  expect(book.problems()).toContainEqual({
    file: 'machine.json',
    path: 'engine.starter',
    code: 'unknown-part',
    found: 'M5',
    expected: 'a part of kind starter',
  });
});

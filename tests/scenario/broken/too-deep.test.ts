import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('guards in guards without end', () => {
  const book = new Edit();
  let guard: object = { all: [] };
  for (let i = 0; i < 100_000; i++) guard = { not: guard };
  book.element('parts-switches.json', 'S2', 'run').when = guard;
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: '',
    code: 'too-deep',
    found: expect.any(String),
    expected: 'guards nested a few deep',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a staircase over a point that the machine has not', () => {
  const book = new Edit();
  book.record('staircases.json', 'staircases', 'power').points = ['G1.+', 'S1.C', 'M1.30'];
  expect(book.problems()).toContainEqual({
    file: 'staircases.json',
    path: `${book.path('staircases.json', 'staircases', 'power')}.points[1]`,
    code: 'unknown-point',
    found: 'S1.C',
    expected: 'a point of this book',
  });
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a cluster that reads what the book has not', () => {
  const book = new Edit();
  const cluster = book.file('machine.json').cluster as Record<string, unknown>;
  cluster.hourMeter = 'P9';
  cluster.codesOf = [{ part: 'A9' }];
  cluster.on = { region: 'A2.RUN', is: ['asleep'] };
  expect(book.problems()).toEqual([
    {
      file: 'machine.json',
      path: 'cluster.hourMeter',
      code: 'unknown-part',
      found: 'P9',
      expected: 'a part of this book',
    },
    {
      file: 'machine.json',
      path: 'cluster.on.is[0]',
      code: 'unknown-state',
      found: 'asleep',
      expected: 'one of off, on',
    },
    {
      file: 'machine.json',
      path: 'cluster.codesOf[0].part',
      code: 'unknown-part',
      found: 'A9',
      expected: 'a part of this book',
    },
  ]);
});

import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

const failuresOf = (
  book: Edit,
  file: string,
  list: string,
  id: string,
): { mode: string; weight: number; ways?: unknown }[] =>
  book.record(file, list, id).failures as { mode: string; weight: number }[];

test('a mode in which such a part cannot fail', () => {
  const book = new Edit();
  failuresOf(book, 'parts-relays.json', 'parts', 'K2')[0].mode = 'overcharge';
  expect(book.problems()).toContainEqual({
    file: 'parts-relays.json',
    path: `${book.path('parts-relays.json', 'parts', 'K2')}.failures[0].mode`,
    code: 'unknown-mode',
    found: 'overcharge',
    expected: expect.stringContaining('relay'),
  });
});

test('a mode that a wire cannot have, and one that the pins of a connector cannot have', () => {
  const book = new Edit();
  failuresOf(book, 'wires.json', 'wires', '206B')[0].mode = 'melted';
  failuresOf(book, 'connectors.json', 'connectors', 'X1')[1].mode = 'open_coil';
  const modes = book.problems().filter((p) => p.code === 'unknown-mode');
  expect(modes).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '206B')}.failures[0].mode`,
    code: 'unknown-mode',
    found: 'melted',
    expected: expect.stringContaining('short_gnd'),
  });
  expect(modes).toContainEqual({
    file: 'connectors.json',
    path: `${book.path('connectors.json', 'connectors', 'X1')}.failures[1].mode`,
    code: 'unknown-mode',
    found: 'open_coil',
    expected: expect.stringContaining('pushed_back'),
  });
});

test('a new word with ways that say what it does is no unknown mode; what the ways name must be there', () => {
  const book = new Edit();
  const failure = failuresOf(book, 'parts-relays.json', 'parts', 'K2')[0];
  failure.mode = 'sticky';
  failure.ways = [[{ kind: 'stuck', region: 'K2', state: 'on' }], [{ kind: 'series', element: 'K2.core', ohms: null }]];
  const found = book.problems().filter((p) => p.path.includes('failures'));
  expect(found).toEqual([
    {
      file: 'parts-relays.json',
      path: `${book.path('parts-relays.json', 'parts', 'K2')}.failures[0].ways[1][0].element`,
      code: 'unknown-element',
      found: 'K2.core',
      expected: 'an element of this book',
    },
  ]);
});

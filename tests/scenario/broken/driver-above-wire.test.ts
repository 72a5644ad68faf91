import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('an output that trips above what its wire carries', () => {
  const book = new Edit();
  const text = JSON.stringify(book.files['parts-a3.json']);
  book.files['parts-a3.json'] = JSON.parse(
    text.replace('{"amps":["A3.hsY1"],"above":6}', '{"amps":["A3.hsY1"],"above":20}'),
  );
  expect(book.problems()).toContainEqual({
    file: 'wires.json',
    path: `${book.path('wires.json', 'wires', '805A')}.ampacityAmps`,
    code: 'driver-above-wire',
    found: '16 A behind A3.hsY1',
    expected: 'a wire for 20 A',
  });
});

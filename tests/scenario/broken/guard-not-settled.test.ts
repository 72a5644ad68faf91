import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('an element that asks for the volts it makes', () => {
  const book = new Edit();
  book.element('parts-switches.json', 'S2', 'run').when = { volts: ['K1.86', 'K1.85'], above: 6 };
  expect(book.problems()).toContainEqual({
    file: 'parts-switches.json',
    path: `${book.elementPath('parts-switches.json', 'S2', 'run')}.when`,
    code: 'guard-not-settled',
    found: 'volts',
    expected: 'a guard on regions, controls and quantities only',
  });
});

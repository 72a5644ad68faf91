/** Codes as a reader at the diagnostic connector shows them: SPN and FMI in the terms of SAE J1939-73. */
import { describe, expect, test } from 'vitest';
import en from '../../assets/texts/en.json' with { type: 'json' };
import { hobbinBook } from '../support/hobbin.ts';
import { Edit } from './book-fixture.ts';

const codes = hobbinBook().parts.flatMap((part) => (part.kind === 'controller' ? part.codes : []));
const meanings: Record<string, string> = en.fmi;

describe.each(codes)('$code $text', ({ spn, fmi }) => {
  test('has a number in the range that the standard leaves to makers (520192 to 524287, from memory)', () => {
    expect([spn >= 520_192, spn <= 524_287]).toEqual([true, true]);
  });

  test('has a failure mode with a meaning (0 to 21 and 31; 22 to 30 are reserved)', () => {
    expect(meanings[String(fmi)]).toBeTruthy();
  });
});

test('the book has 29 codes, none with the numbers of another', () => {
  expect(codes).toHaveLength(29);
  expect(new Set(codes.map(({ spn, fmi }) => `${spn}/${fmi}`)).size).toBe(29);
});

/** Rules that look at one side of a voltage say so; "open load or short" is one code for both, which no mode but 31 says. */
test.each([
  ['P07', 3, 'volts above what the sensor can give'],
  ['P08', 4, 'volts below what the sensor can give'],
  ['P01', 4, 'supply low'],
  ['P09', 1, 'oil pressure below normal, most severe'],
  ['P11', 8, 'no pulses of the speed sensor'],
  ['C11', 9, 'messages of A1 missing'],
  ['H21', 31, 'open load or short'],
])('%s says FMI %d: %s', (code, fmi) => {
  expect(codes.find((c) => c.code === code)?.fmi).toBe(fmi);
});

test('two codes of the same numbers are refused', () => {
  const book = new Edit();
  const [first, second] = book.record('parts-a2.json', 'parts', 'A2').codes as { spn: number; fmi: number }[];
  [second.spn, second.fmi] = [first.spn, first.fmi];
  expect(book.problems()).toContainEqual({
    file: 'parts-a2.json',
    path: `${book.path('parts-a2.json', 'parts', 'A2')}.codes[1].spn`,
    code: 'duplicate-id',
    found: `${first.spn}/${first.fmi}`,
    expected: 'an SPN and FMI of its own',
  });
});

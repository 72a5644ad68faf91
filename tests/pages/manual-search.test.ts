/** What a technician types into the manual's search, and what must and must not come up. */
import { beforeAll, expect, test } from 'vitest';
import { marked, patternsOf, searchManual } from '../../src/pages/manual/search.ts';
import { startWords, textsOf } from '../../src/pages/words/words.ts';
import { hobbinModel } from '../support/hobbin.ts';

beforeAll(startWords);

const hits = (text: string, search: string): string[] =>
  marked(text, patternsOf(search)).flatMap((stretch) => (stretch.hit ? [stretch.text] : []));

test.each([
  ['mA', 'the machine draws 35 mA, 4mA in rest', ['mA', 'mA']],
  ['K1', 'K1 and K10, wire to K1.86', ['K1', 'K1']],
  ['k1', 'coil of K1', ['K1']],
  ['206', '206D, 206, 1206 and 2061', ['206', '206']],
  ['S1', 'S1 off, S10 horn', ['S1']],
  ['relay', 'Relays and a relay', ['Relay', 'relay']],
  ['A+', 'from A+ to B', ['A+']],
  ['208 off', 'with 208 off', ['208', 'off']],
])('%s in “%s”', (search, text, found) => {
  expect(hits(text, search)).toEqual(found);
});

test('what is marked and what is not is the whole text', () => {
  const text = 'K1 feeds K10; K1.87';
  const stretches = marked(text, patternsOf('K1 1.8 feeds'));
  expect(stretches.map((stretch) => stretch.text).join('')).toBe(text);
  expect(marked(text, [])).toEqual([{ text, hit: false }]);
});

test('every sign and every way to fail is explained in the manual', () => {
  const model = hobbinModel();
  for (const [sign] of textsOf('signs')) expect(searchManual(model, sign).map((leaf) => leaf.id)).toContain('words');
  const named = new Set(
    [...model.book.parts, ...model.book.wires, ...model.book.connectors].flatMap((x) => x.failures.map((f) => f.mode)),
  );
  const explained = textsOf('modeNotes').map(([mode]) => mode);
  expect([...named].filter((mode) => !explained.includes(mode))).toEqual([]);
});

/** Reference values, section 1: the wires of the book are copper of their size. AWG and temperature are not claimed. */
import { describe, expect } from 'vitest';
import { hobbinModel } from '../support/hobbin.ts';
import { row, type Status, within } from '../support/row.ts';

/** Annealed copper at 20 °C: 1/58 ohm mm²/m, as milliohm (IEC 60028; from memory). */
const COPPER = 1000 / 58;
/** A crimp or lug in a harness in good order, mohm. */
const END_MOHM = 1;

/** Cross-section mm²; greatest mohm/m of plain copper cable at 20 °C by ISO 6722-1; the same by IEC 60228 class 5. */
const METRIC: [mm2: number, iso: number, iec: number | null, status: Status][] = [
  [0.35, 52.0, null, 'M'],
  [0.5, 37.1, 39.0, 'C2'],
  [0.75, 24.7, 26.0, 'M'],
  [1, 18.5, 19.5, 'M'],
  [1.5, 12.7, 13.3, 'M'],
  [2.5, 7.6, 7.98, 'M'],
  [4, 4.71, 4.95, 'M'],
  [6, 3.14, 3.3, 'M'],
  [10, 1.82, 1.91, 'M'],
  [16, 1.16, 1.21, 'M'],
  [25, 0.743, 0.78, 'M'],
  [35, 0.527, 0.554, 'M'],
  [50, 0.368, 0.386, 'M'],
  [70, 0.259, 0.272, 'M'],
  [95, 0.196, 0.206, 'M'],
  [120, 0.153, 0.161, 'M'],
];

/** Vehicle cable of 105 °C outside an engine space, amperes by mm² of the SAE gauge (ABYC E-11 and SAE J1127: both M). */
const AMPACITY: [mm2: number, amps: number][] = [
  [1, 25],
  [2, 35],
  [3, 45],
  [5, 60],
  [8, 80],
  [13, 120],
  [19, 160],
  [32, 210],
  [50, 285],
  [62, 330],
];

const { book, elements } = hobbinModel();

describe.each(METRIC)('1.4 cable of %d mm²', (mm2, iso, iec, status) => {
  row(status, 'ISO 6722-1 greatest resistance', `${iso} mohm/m is 5 to 16 % above solid copper`, () => {
    within((iso * mm2) / COPPER, { least: 1.05, most: 1.16 });
    if (iec !== null) within(iec / iso, { least: 1, most: 1.06 });
  });

  const wires = book.wires.filter((wire) => wire.mm2 === mm2);
  if (wires.length === 0) return;
  row(
    status,
    'ISO 6722-1; 1/58 ohm mm²/m of IEC 60028',
    `${wires.length} wires: between copper and cable, ends apart`,
    () => {
      for (const wire of wires) {
        const least = (COPPER / mm2) * wire.metres * (1 - 1e-9);
        within(wire.ohms * 1000, { least, most: iso * wire.metres + 2 * END_MOHM }, wire.id);
      }
    },
  );

  const larger = AMPACITY.find(([size]) => size >= mm2);
  if (larger === undefined) return;
  row('M', 'ABYC E-11, next gauge up', `rated no higher than ${larger[1]} A`, () => {
    for (const wire of wires) within(wire.ampacityAmps, { least: 1, most: larger[1] }, wire.id);
  });
});

describe('1.4, 1.5 every wire', () => {
  row('M', 'ISO 6722-1', 'has a size of the table', () => {
    const sizes = METRIC.map(([mm2]) => mm2);
    expect(book.wires.filter((wire) => !sizes.includes(wire.mm2)).map((wire) => wire.id)).toEqual([]);
  });

  row('D', 'series', 'its lugs and its copper in the model have its ohms together', () => {
    for (const wire of book.wires) {
      const own = elements.filter((e) => e.owner === `W:${wire.id}`);
      const ohms = own.reduce((sum, e) => sum + (e.law.kind === 'resistance' ? e.law.ohms : 0), 0);
      expect(ohms, wire.id).toBeCloseTo(wire.ohms, 9);
    }
  });

  row('C', 'KUP-5, wires with number tags', 'bears a number, its own name begins with it', () => {
    for (const wire of book.wires) expect(wire.id.startsWith(wire.number), `${wire.id}: ${wire.number}`).toBe(true);
  });

  row('M', 'North American trade practice', 'of the battery is red on the plus side and black on ground', () => {
    const at = (point: string) => book.wires.filter((wire) => [wire.from, wire.to].includes(point));
    expect([...new Set(at('G1.+').map((wire) => wire.colour))]).toEqual(['RD']);
    expect([...new Set(at('G1.-').map((wire) => wire.colour))]).toEqual(['BK']);
  });
});

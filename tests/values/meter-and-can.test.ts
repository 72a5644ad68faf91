/** Reference values, section 8: what a meter shows. Display, accuracy, burden and leads: `tests/instruments/`. */
import { describe, expect } from 'vitest';
import { readMeter } from '../../src/instruments/index.ts';
import type { World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { benchModel, plainPart } from '../support/bench-book.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { patchChanges } from '../support/patch.ts';
import { type Band, row, type Status, within } from '../support/row.ts';
import { STATES } from '../support/states.ts';

const model = hobbinModel();
const GROUND = 'GND1.L';
const short = (a: string, b: string, ohms = 0.1): Change => ({ kind: 'bridge', a, b, ohms });

describe('8.1 ghost volts', () => {
  row('D', 'arithmetic, 12 x 10/11', 'an open wire with 1 Mohm of leakage to 12 V shows 10.9 V on 10 Mohm', () => {
    const part = plainPart('PS', [
      { id: 'source', a: 'PS.+', b: 'PS.-', law: { kind: 'source', volts: 12, ohms: 1e-3 } },
      { id: 'leak', a: 'PS.+', b: 'PS.m', law: { kind: 'resistance', ohms: 1e6 } },
    ]);
    const world = drive({ model: benchModel([part]), settings: '' });
    expect(readMeter(world, 'volts-dc', 'PS.m', 'PS.-').text).toBe('10.91');
  });
});

describe('8.3 CAN with the battery off, J2.C to J2.D', () => {
  const ohms = (changes: Change[]): number | null =>
    readMeter(drive({ model, settings: STATES.isolated, changes }), 'ohms', 'J2.C', 'J2.D').value;
  const TABLE: [what: string, changes: Change[], band: Band, status: Status, source: string][] = [
    ['sound: 60 ohm', [], { least: 57, most: 63 }, 'C', 'CAN-2; OEM text, 2 x 120 ohm'],
    ['hard short: 0 to 5 ohm', [short('J2.C', 'J2.D', 1)], { least: 0, most: 5 }, 'C', 'CAN-2'],
    ['one terminator too many: about 40 ohm', [short('J2.C', 'J2.D', 120)], { least: 38, most: 42 }, 'C', 'CAN-2'],
    [
      'one terminator missing: about 120 ohm',
      patchChanges('elem R2.term open'),
      { least: 114, most: 126 },
      'C',
      'CAN-2',
    ],
  ];
  for (const [what, changes, band, status, source] of TABLE) {
    row(status, source, what, () => within(ohms(changes) ?? Number.NaN, band));
  }
  // The note says OL; the book's controllers load the lines by tens of kilohms, and its own T66 reads them.
  row('C', 'CAN-2', 'both terminators missing: no ohms that a bus could have', () => {
    expect(ohms(patchChanges('elem R2.term open; elem R3.term open')) ?? Infinity).toBeGreaterThan(10_000);
  });
});

describe('8.3 CAN in traffic, as a meter averages it', () => {
  const lines = (changes: Change[]): { high: number; low: number; world: World } => {
    const world = drive({ model, settings: STATES.run, changes });
    return { high: world.voltsBetween('J2.C', GROUND), low: world.voltsBetween('J2.D', GROUND), world };
  };
  const sound = lines([]);

  row('C', 'truck service note', 'H 2.6 V within 0.1', () => within(sound.high, { least: 2.5, most: 2.7 }));
  row(
    'C',
    'OEM text x 3: dominant 3.5 and 1.5, recessive 2.5 V',
    'H above and L below 2.5 V, as far apart each',
    () => {
      within(sound.high, { least: 2.5, most: 3.5 });
      within(sound.low, { least: 1.5, most: 2.5 });
      within((sound.high + sound.low) / 2, { least: 2.4, most: 2.6 });
    },
  );

  row('M', 'transceiver guides', 'H to L: both about 2.5 V', () => {
    const { high, low } = lines([short('J2.C', 'J2.D')]);
    within(high, { least: 2.4, most: 2.6 });
    within(low, { least: 2.4, most: 2.6 });
  });
  row('M', 'physical layer', 'H to ground: H 0 V, L follows low', () => {
    const { high, low } = lines([short('J2.C', GROUND)]);
    within(high, { most: 0.1 });
    within(low, { most: sound.low - 0.5 });
  });
  row('M', 'physical layer', 'L to ground: L 0 V, H still stands above it', () => {
    const { high, low } = lines([short('J2.D', GROUND)]);
    within(low, { most: 0.1 });
    within(high - low, { least: 0.5 });
  });
  row('M', 'physical layer', 'H to plus: H 12 V, L rises', () => {
    const { high, low } = lines([short('J2.C', 'G1.+')]);
    within(high, { least: 12 });
    within(low, { least: sound.low + 0.5 });
  });
  row('M', 'physical layer', 'L to plus: L 12 V, H is pulled up with it', () => {
    const { high, low } = lines([short('J2.D', 'G1.+')]);
    within(low, { least: 12 });
    within(high, { least: sound.high + 0.5 });
  });
});

/**
 * The book's reference values in 16 states, computed by ngspice from the book's tables with a solver of their own
 * (`reference.tsv` beside this test; red and black points, volts or amperes).
 */
import { describe, expect, it } from 'vitest';
import type { World } from '../../src/machine/index.ts';
import { drive } from '../support/drive.ts';
import { energizedIn } from '../support/energized.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { STATES } from '../support/states.ts';
import { type Row, readTsv } from '../support/tsv.ts';

const rows = readTsv('reference.tsv', import.meta.url);
const quantities = rows.filter((row) => row.quantity !== 'energized');
const energized = rows.find((row) => row.quantity === 'energized') ?? {};

/**
 * With the alternator working the reference holds B+ at a constant 14.333 V, whatever it feeds. The book says (sections
 * 4 and 9) that it regulates 14.20 V at its sense terminal, and so do we: up to 35 mV less at the battery, which through
 * the 0.015 ohm of a charging battery is up to 2.5 A less charge. The tests below this table hold these two instead.
 */
const REGULATED = ['idle', 'work', 'reverse', 'lights'];
const REGULATED_AMPS = ['G1 discharge', 'alternator output'];
/** The turn signals draw their 3 A from bus 15 only while the flasher is on. */
const FLASHING = ['lights', 'lights_stopped'];

function inState(state: string): World {
  const world = drive({ model: hobbinModel(), settings: STATES[state] });
  if (FLASHING.includes(state)) for (let ms = 0; ms < 700 && world.stateOf('K13') !== 'on'; ms += 10) world.advance(10);
  return world;
}

/** Wire and motor currents are written `w_101A` and `i_M1_motor`. */
function measured(world: World, row: Row): number {
  if (row.red.startsWith('w_')) return world.ampsIn(`W:${row.red.slice(2)}`);
  if (row.red.startsWith('i_')) return world.ampsIn(row.red.slice(2).replace('_', '.'));
  return world.voltsBetween(row.red, row.black);
}

describe.each(Object.keys(STATES))('reference values, %s', (state) => {
  const world = inState(state);
  const charging = REGULATED.includes(state);

  it('volts within 1 % and 5 mV, amperes within 1 % and 50 mA', () => {
    const off: string[] = [];
    for (const row of quantities) {
      if (charging && REGULATED_AMPS.includes(row.quantity)) continue;
      const want = Number(row[state]);
      const got = measured(world, row);
      const allowed = 0.01 * Math.abs(want) + (row.unit === 'A' ? 0.05 : 0.005);
      if (!(Math.abs(got - want) <= allowed))
        off.push(`${row.quantity}: book ${want}, here ${got.toFixed(4)} ${row.unit}`);
    }
    expect(off).toEqual([]);
  });

  it('the same relays, outputs and networks are on', () => {
    // The flasher K13 is listed there only while it flashes.
    const names = energized[state].split(' ').filter((name) => name !== 'K13' && name !== '');
    expect(energizedIn(world)).toEqual(names.sort());
  });
});

describe.each(REGULATED)('alternator, %s', (state) => {
  const world = inState(state);
  const row = (quantity: string) => Number(quantities.find((r) => r.quantity === quantity)?.[state]);

  it('holds 14.20 V at its sense terminal (book, sections 4 and 9)', () => {
    expect(world.voltsBetween('G2.S', 'G2.31')).toBeCloseTo(14.2, 3);
  });

  it('charges the battery by its law: what the posts have above 13.75 V, over 0.015 ohm (book, section 9)', () => {
    const charge = (world.voltsBetween('G1.+', 'G1.-') - 13.75) / 0.015;
    expect(-world.ampsIn('W:101A')).toBeCloseTo(charge, 1);
  });

  it('feeds the same loads as the reference, the charge apart', () => {
    const loads = world.ampsIn('W:301A') + world.ampsIn('W:101A');
    const book = row('alternator output') + row('G1 discharge');
    expect(Math.abs(loads - book)).toBeLessThan(0.01 * book);
  });
});

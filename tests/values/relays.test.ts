/** Reference values, section 3: relays. Pull-in, drop-out, times and hysteresis of each: `tests/machine/relays.test.ts`. */
import { describe } from 'vitest';
import { World } from '../../src/machine/index.ts';
import { benchModel, benchSupply, joint, partOf } from '../support/bench-book.ts';
import { drive } from '../support/drive.ts';
import { momentOf, watch } from '../support/edges.ts';
import { hobbinBook, hobbinModel } from '../support/hobbin.ts';
import { row, within } from '../support/row.ts';
import { STATES } from '../support/states.ts';

/** Across every coil of the book, ohms (ISO 7588 relays: 560 to 680; from memory). */
const SUPPRESSION = 680;
const relays = hobbinBook().parts.flatMap((part) => (part.kind === 'relay' ? [part] : []));
const plugIn = relays.filter((relay) => relay.bolted !== true);
const bare = (ohms: number): number => 1 / (1 / ohms - 1 / SUPPRESSION);

describe('3.1 coils', () => {
  for (const relay of plugIn) {
    row('C', 'OEM manual, starter relay check', `${relay.id}: 40 to 100 ohm`, () => {
      within(bare(relay.coilOhms), { least: 40, most: 100 });
    });
  }

  // K1 and K3 are 70 A relays with stronger coils by their own type plate.
  for (const relay of plugIn.filter((one) => !one.type.includes('70 A'))) {
    row('C2', 'F7 (V23134) datasheet, RLY-1', `${relay.id}: 90 ohm within 10 % without its suppression`, () => {
      within(bare(relay.coilOhms), { least: 81, most: 99 });
    });
    row('C2', 'RLY-5; RLY-1 with 680 ohm beside it', `${relay.id}: about 150 mA at 12 V`, () => {
      within(12 / relay.coilOhms, { least: 0.13, most: 0.17 });
    });
  }

  for (const relay of relays) {
    row('C', 'RLY-4, generic 12 V relay', `${relay.id}: on at 9 V at the latest, off not before 1.2 V`, () => {
      within(relay.pullInVolts, { most: 9 });
      within(relay.dropOutVolts, { least: 1.2 });
      within(relay.pullInVolts / relay.dropOutVolts, { least: 2 });
    });
    row('M', 'mini-ISO datasheets', `${relay.id}: new contacts of 15 mohm at most`, () => {
      within(Math.max(relay.contactOhms, relay.restContactOhms ?? 0), { most: 0.015 });
    });
  }

  for (const relay of relays.filter((one) => one.bolted === true)) {
    row('C', 'TM-A p 6-101, magnetic switch', `${relay.id}: coil of about 1 A`, () => {
      within(12 / relay.coilOhms, { least: 0.5, most: 1.5 });
    });
  }
});

describe('3.1 contacts in use', () => {
  const crank = drive({ model: hobbinModel(), settings: STATES.crank });

  row('C', 'TM-A p 6-101', 'the key switch starts with less than its 5 to 20 A', () => {
    within(Math.abs(crank.ampsIn('S2.crank')), { least: 0.01, most: 5 });
  });

  row(
    'C2',
    'F7, RLY-1: make 240 A, 70 A at 23 °C',
    'the start relay carries both windings within its make current',
    () => {
      const world = drive({ model: hobbinModel(), settings: STATES.run });
      world.setControl('key', 'start');
      let most = 0;
      world.advance(300, (now) => {
        most = Math.max(most, Math.abs(now.ampsIn('K1.no')));
      });
      within(most, { least: 30, most: 70 });
    },
  );
});

describe('3.1 times at 12 V', () => {
  const LONG_MS = 100;
  for (const relay of plugIn) {
    const [plus, minus] = relay.coil.map((terminal) => `${relay.id}.${terminal}`);
    const joints = [joint('plus', 'PS.+', plus), joint('minus', 'PS.-', minus)];
    const world = new World(benchModel([benchSupply(12), partOf(relay.id)], joints));
    world.advance(LONG_MS);
    world.setQuantity('knob', 0);
    const on = momentOf(watch(world, LONG_MS, [relay.id]), relay.id, 'on') ?? Number.NaN;
    world.setQuantity('knob', 1e6);
    const off = momentOf(watch(world, LONG_MS, [relay.id]), relay.id, 'off') ?? Number.NaN;

    row('C2', 'F7 about 7 ms, RLY-1; 15 ms at most, RLY-4 (C)', `${relay.id} operates in 4 to 15 ms`, () => {
      within(on, { least: 4, most: 15 });
    });
    row('C2', 'F7 about 2 ms bare, RLY-1; second maker 10 ms at most', `${relay.id} releases in 2 to 10 ms`, () => {
      within(off, { least: 2, most: 10 });
    });
  }
});

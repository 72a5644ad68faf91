/** Reference values, section 6: what may be lost on the way. The book's own limits: `tests/machine/starter.test.ts`. */
import { describe } from 'vitest';
import type { World } from '../../src/machine/index.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { row, within } from '../support/row.ts';
import { STATES } from '../support/states.ts';

const model = hobbinModel();
const inState = (state: string): World => drive({ model, settings: STATES[state] });
/** Half of the tenth of a volt in which the manual prints its limits. */
const HALF_TENTH = 0.05;

describe('6.1 start circuit', () => {
  const crank = inState('crank');
  const amps = Math.abs(crank.ampsIn('W:101A'));
  const drop = (from: string, to: string): number => Math.abs(crank.voltsBetween(from, to));
  const plus = drop('G1.+', 'M1.30');
  const ground = drop('M1.31', 'G1.-');
  const owned = (owner: string): number =>
    model.elements.filter((e) => e.owner === owner).reduce((sum, e) => sum + Math.abs(crank.volts(e.a, e.b)), 0);

  row('C2', 'SAE J541 light and medium duty, STD-1', 'battery to starter no more than 2.0 mohm', () => {
    within((plus + ground) / amps, { least: 0.0005, most: 0.002 });
  });
  row('C2', 'SAE J3053-2024 light and medium duty, STD-3', 'the same, 0.24 V at 120 A', () => {
    within(((plus + ground) / amps) * 120, { most: 0.24 });
  });
  row('C', 'TM 10-3930-671-24 sheet 556', 'positive cable with its connections under 0.4 V', () => {
    within(plus, { least: 0.05, most: 0.4 });
  });
  row('C', 'TM 5-3820-256-24-4 sheet 450, printed in tenths', 'ground side 0.2 V', () => {
    within(ground, { least: 0.05, most: 0.2 + HALF_TENTH });
  });
  row('C', 'TM 5-3820-256-24-4 sheet 450', 'insulated side 0.5 V in all', () => {
    within(plus, { most: 0.5 });
  });

  for (const wire of model.book.wires.filter((one) => ['101A', '102A', '001A', '002A'].includes(one.id))) {
    // Under 3 ft 0.1 V, 3 to 6 ft 0.2 V.
    const limit = wire.metres < 0.914 ? 0.1 : 0.2;
    row('C', 'TM 5-3820-256-24-4 sheet 450', `cable ${wire.id}, ${wire.metres} m: ${limit} V`, () => {
      within(owned(`W:${wire.id}`), { least: 0.01, most: limit });
    });
    row('C', 'TM 9-2320-211-20 p 2-93', `cable ${wire.id}: 0.2 V each section`, () => {
      within(owned(`W:${wire.id}`), { most: 0.2 });
    });
    row('C', 'TM 5-3820-256-24-4 sheet 450, printed in tenths', `lugs of ${wire.id}: 0.0 V each`, () => {
      for (const side of ['from', 'to']) {
        const lug = model.elements.find((e) => e.id === `L:${wire.id}@${side}`);
        if (lug === undefined) throw new Error(`${wire.id} has no lug at its ${side} end`);
        within(Math.abs(crank.volts(lug.a, lug.b)), { most: HALF_TENTH }, lug.id);
      }
    });
  }

  row('C', 'TM 5-3820-256-24-4 sheet 450', 'disconnect switch 0.1 V, solenoid switch 0.2 V', () => {
    within(drop('S1.A', 'S1.B'), { most: 0.1 });
    within(drop('M1.30', 'M1.MF'), { most: 0.2 });
  });
  row('C', 'engine warranty test, small engines', 'battery 9.0 V or more, starter no more than 1 V below', () => {
    within(drop('G1.+', 'G1.-'), { least: 9 });
    within(plus + ground, { most: 1 });
  });

  row('C', 'TM-B, first reading with both windings on', 'control circuit plus to S and ground return: 1.0 V', () => {
    const world = inState('run');
    world.setControl('key', 'start');
    for (let ms = 0; ms < 200 && world.stateOf('K1') !== 'on'; ms++) world.advance(1);
    world.advance(2);
    within(Math.abs(world.ampsIn('W:208A')), { least: 30 });
    const lost = world.voltsBetween('G1.+', 'M1.50') + world.voltsBetween('M1.31', 'G1.-');
    within(lost, { least: 0.2, most: 1 });
  });
});

describe.each(['run', 'preheat', 'idle', 'work', 'reverse', 'lights', 'crank'])(
  '6.2 general circuits, state %s',
  (state) => {
    const world = inState(state);
    const carrying = model.elements
      .map((element, i) => ({
        element,
        amps: Math.abs(world.amps(i)),
        volts: Math.abs(world.volts(element.a, element.b)),
      }))
      .filter(({ amps }) => amps > 0.01);
    const kinds = new Map(model.book.parts.map((part) => [part.id, part.kind]));

    row('M', 'trade practice', 'every plug pin 0.1 V at most', () => {
      const pins = carrying.filter(({ element }) => element.id.startsWith('X:'));
      within(pins.length, { least: 10 });
      for (const { element, volts } of pins) within(volts, { most: 0.1 }, element.id);
    });

    row('M', 'trade practice', 'every contact of a switch or relay 0.2 V at most', () => {
      const contacts = carrying.filter(
        ({ element }) => element.law.kind === 'contact' && ['switch', 'relay'].includes(kinds.get(element.owner) ?? ''),
      );
      within(contacts.length, { least: 3 });
      for (const { element, volts } of contacts) within(volts, { most: 0.2 }, element.id);
    });
  },
);

describe('6.2 grounds and output line', () => {
  for (const state of ['run', 'idle', 'work']) {
    row('M', 'trade practice', `grounds of the controllers within 0.1 V of the battery, state ${state}`, () => {
      const world = inState(state);
      for (const part of model.book.parts) {
        if (part.kind !== 'controller') continue;
        within(Math.abs(world.voltsBetween(`${part.id}.${part.ground}`, 'G1.-')), { most: 0.1 }, part.id);
      }
    });
  }

  row('C', 'OEM manual, alternator output line', 'no more than 0.3 V at 30 A', () => {
    const world = inState('lights');
    const ohms = Math.abs(world.voltsBetween('G2.B+', 'G1.+') / world.ampsIn('W:301A'));
    within(ohms * 30, { least: 0.01, most: 0.3 });
  });
});

/** Reference values, section 5: starter windings, motor and cranking. More of them: `tests/machine/starter.test.ts`. */
import { describe } from 'vitest';
import type { World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { row, within } from '../support/row.ts';
import { STATES } from '../support/states.ts';

const model = hobbinModel();
const inState = (state: string, changes: Change[] = []): World => drive({ model, settings: STATES[state], changes });

/** Both windings have their current and the plunger has not yet moved. */
function pullingIn(): World {
  const world = inState('run');
  world.setControl('key', 'start');
  for (let ms = 0; ms < 200 && world.stateOf('K1') !== 'on'; ms++) world.advance(1);
  world.advance(2);
  if (world.stateOf('M1') !== 'out') throw new Error('the plunger is in already');
  return world;
}

describe('5.1 solenoid windings', () => {
  const world = pullingIn();
  const volts = world.voltsBetween('M1.50', 'M1.31');
  const pull = Math.abs(world.ampsIn('M1.pull')) / volts;
  const hold = Math.abs(world.ampsIn('M1.hold')) / volts;

  row('C', 'TM-A, small industrial diesel, at 12 V', 'pull-in about 40 A', () => {
    within(pull * 12, { least: 36, most: 44 });
  });
  row('C', 'TM-A 5 A at 12 V; TM-B size B 19 A at 10 V', 'hold-in between 5 A and 19 A', () => {
    within(hold * 12, { least: 5 });
    within(hold * 10, { most: 19 });
  });
  row('C', 'OEM manual, name withheld', 'hold-in 10 to 20 A at 10 V', () => {
    within(hold * 10, { least: 9.95, most: 20 });
  });
  row('C', 'TM-B sizes A to D, TM-A', 'pull-in is the stronger by 2.8 to 8 times', () => {
    within(pull / hold, { least: 2.8, most: 8 });
  });
  row('C', 'TM-A', 'the contact carries less than its 1000 A even at standstill', () => {
    within(Math.abs(inState('stall').ampsIn('M1.contact')), { least: 300, most: 1000 });
  });
});

describe('5.2 motor', () => {
  const law = model.elements.find((e) => e.id === 'M1.motor')?.law;
  if (law?.kind !== 'motor') throw new Error('M1.motor is not a motor');
  const crankRpm = (volts: number, amps: number): number => (volts - amps * law.ohms) / law.voltsPerRpm;
  /** The least ratio of ring gear to pinion (handbook, from memory). */
  const RATIO = 9;

  row('C', 'OEM manual, 4-cylinder car, A', 'locked at 4 V it draws no more than 680 A', () => {
    within(4 / law.ohms, { least: 300, most: 680 });
  });
  row('C', 'OEM manual, 4-cylinder car, B', 'locked at 3.5 V it draws no more than 960 A', () => {
    within(3.5 / law.ohms, { most: 960 });
  });
  row('C', 'OEM manual, A; ratio 9:1 at least (M)', 'at 7.5 V and 300 A its pinion turns 870 rpm or more', () => {
    within(crankRpm(7.5, 300) * RATIO, { least: 870 });
  });
  row('C', 'OEM manual, B; ratio 9:1 at least (M)', 'at 7.7 V and 400 A its pinion turns 710 rpm or more', () => {
    within(crankRpm(7.7, 400) * RATIO, { least: 710 });
  });
});

describe('5.3 cranking', () => {
  const crank = inState('crank');

  row('C', 'compactor OEM manual', 'the posts do not fall below 10 V', () => {
    within(crank.voltsBetween('G1.+', 'G1.-'), { least: 10 });
  });
  row('C', 'industrial engine manual, 4 kW starter', 'terminal 30 takes 1000 A at most', () => {
    within(Math.abs(crank.ampsIn('W:102A')), { least: 150, most: 1000 });
  });
  row('M', 'automotive handbook, healthy warm engine', '180 to 250 rpm', () => {
    within(crank.quantityOf('rpm'), { least: 180, most: 250 });
  });
  row('C', 'TM 10-3930-671-24 sheet 553', 'resistance in the cable: it turns slower and draws less', () => {
    const bad = inState('crank', [{ kind: 'series', element: 'W:102A', ohms: 0.01 }]);
    within(bad.ampsIn('W:101A') / crank.ampsIn('W:101A'), { least: 0.3, most: 0.95 });
    within(bad.quantityOf('rpm') / crank.quantityOf('rpm'), { most: 0.9 });
  });
});

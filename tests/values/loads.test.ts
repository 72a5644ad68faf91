/** Reference values, section 7: charging, loads and lamps at 20 °C. Ripple, temperature and inrush are not claimed. */
import { describe } from 'vitest';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { row, type Status, within } from '../support/row.ts';
import { STATES } from '../support/states.ts';

const model = hobbinModel();
const RUNNING = ['idle', 'work', 'reverse', 'lights'];

describe.each(RUNNING)('7 charging, state %s', (state) => {
  const world = drive({ model, settings: STATES[state] });

  row('C', 'OEM specification, regulator at 20 °C', 'regulated volts 13.7 to 14.6', () => {
    within(world.voltsBetween('G2.S', 'G2.31'), { least: 13.7, most: 14.6 });
  });
  row('M', 'handbook', 'regulated volts 14.2 within 0.2 at 25 °C', () => {
    within(world.voltsBetween('G2.S', 'G2.31'), { least: 14.0, most: 14.4 });
  });
  row('C', 'OEM manual, machine running', 'the posts have 13 to 14.5 V', () => {
    within(world.voltsBetween('G1.+', 'G1.-'), { least: 13, most: 14.5 });
  });
});

describe('7 loads', () => {
  row('M', 'trade practice', 'alternator with the engine off: a few milliamperes back', () => {
    const off = drive({ model, settings: STATES.off });
    within(Math.abs(off.ampsIn('G2.leak') + off.ampsIn('G2.senseR')), { least: 0.0005, most: 0.01 });
  });
  row('C', 'trade bulletin 2017, FUSE-CHART1', 'the whole machine asleep: not over 50 mA', () => {
    const world = drive({ model, settings: STATES.run });
    world.setControl('key', 'off');
    world.advance(900_000);
    within(world.ampsIn('W:101A'), { least: 0.005, most: 0.05 });
  });
  row('M', 'engine application guides, 12 V grid heater', 'intake heater 95 to 170 A', () => {
    within(Math.abs(drive({ model, settings: STATES.preheat }).ampsIn('R1.elem')), { least: 95, most: 170 });
  });
});

/** Filament, test volts of ECE R37, watts printed on the bulb, greatest watts at those volts. */
const LAMPS: [filament: string, volts: number, watts: number, most: number, status: Status][] = [
  ['E1.fil56', 13.2, 55, 68, 'M'],
  ['E2.fil56', 13.2, 55, 68, 'M'],
  ['E11.fil+', 13.2, 55, 68, 'M'],
  ['E13.fil+', 13.2, 55, 68, 'M'],
  ['E5.filL', 13.5, 21, 26.5, 'M'],
  ['E9.fil54', 13.5, 21, 26.5, 'M'],
  ['E9.fil58', 13.5, 5, 6, 'M'],
  ['E18.fil58', 13.5, 5, 6, 'M'],
];

describe('7 lamps', () => {
  for (const [filament, volts, watts, most, status] of LAMPS) {
    row(status, 'ECE R37', `${filament}: its ${watts} W and no more than ${most} at ${volts} V`, () => {
      const law = model.elements.find((e) => e.id === filament)?.law;
      const ohms = law?.kind === 'resistance' ? law.ohms : Number.NaN;
      // A printed watt is good to the last digit.
      within((volts * volts) / ohms, { least: watts - 0.5, most });
    });
  }
});

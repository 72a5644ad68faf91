/** Reference values, section 4: the battery at rest and under load, at 20 °C and above. Cold and age are not claimed. */
import { describe, expect } from 'vitest';
import { readMeter } from '../../src/instruments/index.ts';
import { restVolts, type World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { row, within } from '../support/row.ts';
import { STATES } from '../support/states.ts';

/** Of G1: "12 V 100 Ah 760 A(EN)". */
const CAPACITY_AH = 100;
const CRANKING_AMPS = 760;
const NOMINAL_VOLTS = 12.65;
const HEALTHY_OHMS = 0.007;

const model = hobbinModel();

/** Off the machine, with so much of its charge used. */
function alone(usedAh: number, changes: Change[] = []): World {
  const arrive = (world: World) => world.setQuantity('G1.usedAh', usedAh);
  return drive({ model, settings: STATES.isolated, changes, arrive });
}

describe('4.1 rested volts by state of charge', () => {
  const BCI: [percent: number, volts: number][] = [
    [100, 12.65],
    [75, 12.45],
    [50, 12.24],
    [25, 12.06],
    [0, 11.89],
  ];
  for (const [percent, volts] of BCI) {
    row('C2', 'table credited to BCI, BAT-1 and BAT-2', `${percent} %: ${volts} V at the posts`, () => {
      const reading = readMeter(alone(CAPACITY_AH * (1 - percent / 100)), 'volts-dc', 'G1.+', 'G1.-');
      expect(reading.text).toBe(volts.toFixed(2));
    });
  }

  const ARMY: [percent: number, volts: number][] = [
    [100, 12.6],
    [75, 12.4],
    [50, 12.2],
    [25, 12.0],
  ];
  for (const [percent, volts] of ARMY) {
    row('C', 'TM-C, TM 5-3805-262-20 p 5-142, in tenths', `${percent} %: about ${volts} V`, () => {
      within(restVolts(percent / 100) - volts, { least: 0, most: 0.1 });
    });
  }

  row('C2', 'BAT-1 and BAT-2', 'never rises as charge is drawn', () => {
    for (let k = 1; k <= 1000; k++) within(restVolts((k - 1) / 1000), { most: restVolts(k / 1000) });
  });
});

describe('4.3 load test', () => {
  /** Volts at the posts after 15 s of a load that draws so much at first. */
  function underLoad(amps: number, ohms = HEALTHY_OHMS): number {
    const aged: Change = { kind: 'battery', element: 'G1.cell', ohms };
    const load: Change = { kind: 'bridge', a: 'G1.+', b: 'G1.-', ohms: NOMINAL_VOLTS / amps - ohms };
    const world = alone(0, [aged, load]);
    within(-world.ampsIn('G1.cell'), { least: amps * 0.99, most: amps * 1.01 });
    world.advance(15_000);
    return world.voltsBetween('G1.+', 'G1.-');
  }

  row('C', 'four agreeing OEM manuals', 'a sound one keeps 9.6 V at half its cranking amperes', () => {
    within(underLoad(CRANKING_AMPS / 2), { least: 9.6 });
  });
  row('C', 'OEM text, alternative limit', 'and 9.7 V', () => {
    within(underLoad(CRANKING_AMPS / 2), { least: 9.7 });
  });
  row('C', 'TM 5-3805-263-14&P-2 p 85; TM 5-3805-260-24 p 146', 'and 9 V at three times its Ah, 300 A', () => {
    within(underLoad(3 * CAPACITY_AH), { least: 9 });
  });
  row('C', 'four agreeing OEM manuals', 'one with 15 mohm, the mildest that is called weak, fails', () => {
    within(underLoad(CRANKING_AMPS / 2, 0.015), { most: 9.6 });
  });
});

describe('4.4 internal resistance', () => {
  row('D', '(12.6 - 9.6) / (CCA/2); ohmic 3.0 V/CCA (M)', 'between ohmic and the limit of the load test', () => {
    const loaded = alone(0, [{ kind: 'bridge', a: 'G1.+', b: 'G1.-', ohms: 0.1 }]);
    const volts = loaded.voltsBetween('G1.+', 'G1.-');
    const ohms = (NOMINAL_VOLTS - volts) / (volts / 0.1);
    within(ohms, { least: 3 / CRANKING_AMPS, most: (12.6 - 9.6) / (CRANKING_AMPS / 2) });
  });
});

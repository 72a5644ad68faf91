/** As `ngspice.test.ts`, with faults of the start circuit that no job has: bridges, welds, high and low resistances. */
import { expect, it } from 'vitest';
import { World } from '../../src/machine/index.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { combinations, sample } from '../support/list.ts';
import { bring, Outside } from '../support/outside.ts';
import { patchChanges } from '../support/patch.ts';

const RELEASE = process.env.OHMYARD_RELEASE !== undefined;
const IN_A_TEST_RUN = 45;
const CHOICE = 45;
/** In the patch language of the electrical book. */
const FAULTS = [
  'elem F10.link open',
  'res W:101A 0.35',
  'elem S5.on open',
  'open W:510E',
  'elem S1.main 0.0035',
  'elem M1.contact 0.016',
  'set ri 0.040',
  'res W:108A 0.35',
  'wshort 207A 0.5 GND2.M 0.1',
  'stuck K1 1',
  'wshort 203A 0.3 GND4.L 0.06',
  'elem S2.run 75',
  'elem K2.coil open',
  'short X9.1.a X9.2.a 0.02',
];
const cases = combinations(FAULTS, ['off', 'acc', 'run', 'start'], ['N', 'F', 'R'], ['on', 'off'], ['1', '0']);
const chosen = RELEASE ? cases : sample(cases, IN_A_TEST_RUN, CHOICE);

it(
  `node volts as in ngspice, ${chosen.length} of ${cases.length} states`,
  async () => {
    const outside = new Outside();
    for (const [patch, key, lever, seat, pbrake] of chosen) {
      const world = bring(new World(hobbinModel(), patchChanges(patch)), { lever, seat, pbrake, key });
      await outside.judge(world, `${patch}, key ${key}, lever ${lever}, seat ${seat}, brake ${pbrake}`);
    }
    expect(outside.states).toBe(chosen.length);
    if (RELEASE) console.info(outside.summary());
  },
  RELEASE ? 900_000 : 120_000,
);

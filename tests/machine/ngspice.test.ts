/**
 * The outside judge: ngspice solves the machine's own netlist, and every point must have the same volts. Sound and with
 * faults of the start circuit, in every key position with lever, seat and brake either way. Relays, timers and speed are
 * ours in both; what this proves is the network's solution, bridges and islands included.
 */
import { describe, expect, it } from 'vitest';
import { netlistOf, World } from '../../src/machine/index.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { combinations, sample } from '../support/list.ts';
import { solveNetlist } from '../support/ngspice.ts';
import { patchChanges } from '../support/patch.ts';

const SOUND = 'set canok 1';
/** In the patch language of the electrical book. */
const FAULTS = [
  'elem F10.link open',
  'res W:101A 0.35',
  'res X:X3.3 60',
  'elem S4.down open',
  'elem S5.on open',
  'open W:510E',
  'res W:002A 0.010',
  'elem S1.main 0.0035',
  'elem M1.contact 0.016',
  'elem M1.contact open',
  'set ri 0.040',
  'res W:108A 0.35',
  'open X:X1.2',
  'wshort 207A 0.5 GND2.M 0.1',
  'stuck K1 1',
  'wshort 203A 0.3 GND4.L 0.06',
  'elem S2.run 75',
  'elem K2.coil open',
  'elem K2.no 55',
];
const STATES = combinations(['off', 'acc', 'run', 'start'], ['N', 'F', 'R'], ['on', 'off'], ['1', '0']);
const IN_A_TEST_RUN = 150;
/** Long enough for A1 to wake; then the crankshaft has its speed and has not fired. A chattering machine is caught so. */
const RUN_MS = 1000;
const HELD_MS = 600;
/** Both solve in doubles: far closer than any meter could tell. */
const VOLTS = 1e-5;
const SHARE = 1e-6;

function inState(patch: string, [key, lever, seat, brake]: string[]): World {
  const world = new World(hobbinModel(), patchChanges(patch));
  world.setControl('lever', lever);
  world.setControl('seat', seat);
  world.setControl('pbrake', brake);
  if (key === 'off') return world;
  world.setControl('key', key === 'acc' ? 'acc' : 'run');
  world.advance(RUN_MS);
  if (key === 'start') world.setControl('key', 'start');
  world.advance(HELD_MS);
  return world;
}

interface Worst {
  volts: number;
  where: string;
}

async function compare(patch: string, state: string[], worst: Worst): Promise<string[]> {
  const world = inState(patch, state);
  const title = `${patch}, key ${state.join(' ')}`;
  const points = await solveNetlist(netlistOf(world, title));
  const off: string[] = [];
  for (const [point, volts] of points) {
    const ours = world.voltsBetween(point, world.model.book.reference);
    const error = Math.abs(ours - volts);
    if (error > worst.volts) Object.assign(worst, { volts: error, where: `${point}: ${title}` });
    if (!(error <= VOLTS + SHARE * Math.abs(volts))) off.push(`${point}: ngspice ${volts}, here ${ours}`);
  }
  expect(points.size).toBeGreaterThan(world.model.points.length);
  return off;
}

async function compareAll(cases: [patch: string, state: string[]][]): Promise<void> {
  const worst = { volts: 0, where: 'nowhere' };
  for (const [patch, state] of cases) {
    expect(await compare(patch, state, worst), `${patch}, key ${state.join(' ')}`).toEqual([]);
  }
  if (process.env.OHMYARD_RELEASE !== undefined) console.info(`largest difference ${worst.volts} V at ${worst.where}`);
}

describe('node volts as in ngspice, within 10 µV and a millionth', () => {
  it('sound, all states of key, lever, seat and brake', async () => {
    await compareAll(STATES.map((state) => [SOUND, state]));
  });

  const faulty = FAULTS.flatMap((patch) => STATES.map((state): [string, string[]] => [patch, state]));
  const release = process.env.OHMYARD_RELEASE !== undefined;
  const chosen = release ? faulty : sample(faulty, IN_A_TEST_RUN, 45);

  it(
    `faults of the start circuit, ${chosen.length} of ${faulty.length} states`,
    async () => {
      await compareAll(chosen);
    },
    release ? 600_000 : 60_000,
  );
});

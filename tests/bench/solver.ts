/** How long the whole machine takes to solve, beside ngspice on the same network in the same process. */
import { netlistOf } from '../../src/machine/index.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { solveNodes } from '../support/ngspice.ts';
import { STATES } from '../support/states.ts';
import { type Figure, figure, median, timed } from './figure.ts';

const OURS = 2000;
const THEIRS = 40;
/** Operating points in one of ngspice's runs, to tell its solving from its reading of the netlist. */
const SWEEP_POINTS = 100;

export async function solverFigures(): Promise<Figure[]> {
  const world = drive({ model: hobbinModel(), settings: STATES.crank });
  const { network } = world.electrics;
  let seen = 0;
  // All of it each time, and every node: ngspice works them all out too.
  const once = await timed(
    () => {
      network.factor();
      network.solve();
      seen += network.volts.length;
    },
    OURS,
    500,
  );
  const again = await timed(
    () => {
      network.solve();
      seen += network.volts.length;
    },
    OURS,
    500,
  );
  if (seen === 0) throw new Error('nothing was solved');
  const text = netlistOf(world, 'operating point');
  const spice = await timed(
    async () => {
      await solveNodes(text);
    },
    THEIRS,
    5,
  );
  const sweep = text.replace('.op\n', `VSWEEP sweep 0 0\nRSWEEP sweep 0 1\n.dc VSWEEP 0 ${SWEEP_POINTS} 1\n`);
  const sweeps = await timed(
    async () => {
      await solveNodes(sweep);
    },
    THEIRS,
    5,
  );
  const perPoint = (median(sweeps) - median(spice)) / SWEEP_POINTS;
  const turn = await timed(
    () => {
      const copy = ready.copy();
      copy.setControl('key', 'start');
      copy.advance(600);
    },
    60,
    10,
  );
  return [
    figure('solve.operating-point', median(once) * 1000, 'µs', OURS, {
      name: 'ngspice (eecircuit-engine 1.8.0), warm, same process: the same network as a netlist, read and solved',
      value: median(spice) * 1000,
    }),
    figure('solve.operating-point.without-reading', median(once) * 1000, 'µs', OURS, {
      name: `the same ngspice, netlist already read: one more point of a sweep over ${SWEEP_POINTS}, its volts written out`,
      value: perPoint * 1000,
    }),
    figure('solve.source-moved', median(again) * 1000, 'µs', OURS, {
      name: 'the same ngspice at one more point of that sweep, where a source alone has moved',
      value: perPoint * 1000,
    }),
    figure('solve.key-turn', median(turn), 'ms', 60),
  ];
}

const ready = drive({ model: hobbinModel(), settings: STATES.run });

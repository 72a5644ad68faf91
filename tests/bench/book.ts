/** How long the whole book of faults takes in one state and in all, and ten seconds at the starter, each beside ngspice. */
import { buildModel, netlistOf } from '../../src/machine/index.ts';
import { drive } from '../support/drive.ts';
import { hobbinBook, hobbinModel } from '../support/hobbin.ts';
import type { Hypothesis } from '../support/hypotheses.ts';
import { solveNodes } from '../support/ngspice.ts';
import { STATES } from '../support/states.ts';
import { type Figure, figure, median, timed } from './figure.ts';
import { allHypotheses, Standing } from './hypotheses.ts';

const STATE = 'crank';
const PASSES = 5;
/** Of the whole book each one in so many is settled, to stand for it in all states; the next pass takes others. */
const SHARE = 40;
const SHARE_PASSES = 5;
/** Each one in so many is held against a machine that has seen nothing before. */
const CHECKED = 97;
const SPICE_NETWORKS = 16;
const SPICE_WARM = 5;
const CRANK_MS = 10_000;
const CRANKINGS = 20;
const SPICE = 'ngspice (eecircuit-engine 1.8.0), warm, same process, each network read and solved';

export async function bookFigures(): Promise<Figure[]> {
  return [...(await oneState()), ...(await dictionary()), ...(await cranking())];
}

/** Milliseconds that ngspice takes for one of these, in the middle. */
async function spiceMs(netlists: readonly string[]): Promise<number> {
  let next = 0;
  const times = await timed(
    async () => {
      await solveNodes(netlists[next++ % netlists.length]);
    },
    netlists.length,
    SPICE_WARM,
  );
  return median(times);
}

/** So many of a list, evenly spread. */
function spread<T>(list: readonly T[], count: number): T[] {
  return Array.from({ length: count }, (_, i) => list[Math.floor(((i + 0.5) * list.length) / count)]);
}

const every = <T>(list: readonly T[], step: number, first: number): T[] => list.filter((_, i) => i % step === first);

async function oneState(): Promise<Figure[]> {
  const model = hobbinModel();
  const all = allHypotheses(model);
  const standing = new Standing(model, STATES[STATE]);
  for (const hypothesis of every(all, CHECKED, 0)) standing.check(hypothesis);
  const times = await timed(() => settleAll(standing, all), PASSES, 1);
  const one = await spiceMs(spread(all, SPICE_NETWORKS).map((hypothesis) => standing.netlist(hypothesis)));
  const unit = `ms for ${all.length} hypotheses in state ${STATE}, each settled`;
  const peer = {
    name: `${SPICE}: ${SPICE_NETWORKS} of the settled networks, times ${all.length}`,
    value: one * all.length,
  };
  return [
    figure('solve.state-hypotheses', median(times), unit, PASSES, peer),
    figure('solve.state-hypotheses.worst', Math.max(...times), unit, PASSES, peer),
  ];
}

function settleAll(standing: Standing, all: readonly Hypothesis[]): void {
  for (const hypothesis of all) standing.with(hypothesis);
}

/** Hypothesis by hypothesis through all states, so that what a fault adds to the plan is worked out once for all of them. */
async function dictionary(): Promise<Figure[]> {
  // A model of its own: nothing of it is known from what was measured before.
  const model = buildModel(hobbinBook());
  const all = allHypotheses(model);
  const states = Object.keys(STATES);
  const standings = states.map((state) => new Standing(model, STATES[state]));
  let pass = 0;
  let settled = 0;
  const times = await timed(
    () => {
      const some = every(all, SHARE, Math.floor((pass++ * SHARE) / (SHARE_PASSES + 1)));
      settled += some.length * states.length;
      for (const hypothesis of some) for (const standing of standings) standing.with(hypothesis);
    },
    SHARE_PASSES,
    1,
  );
  const networks = all.length * states.length;
  const mean = settled / (SHARE_PASSES + 1);
  const chosen = spread(all, states.length);
  for (const [i, standing] of standings.entries()) standing.check(chosen[i]);
  const one = await spiceMs(standings.map((standing, i) => standing.netlist(chosen[i])));
  const scaled = `scaled from one in ${SHARE} to ${all.length} hypotheses times ${states.length} states`;
  return [
    figure('solve.dictionary', (median(times) * networks) / mean, `ms, ${scaled}`, SHARE_PASSES, {
      name: `${SPICE}: a settled network of each state, times ${networks}`,
      value: one * networks,
    }),
  ];
}

/** With the tank empty, so that the engine does not fire. */
async function cranking(): Promise<Figure[]> {
  const model = hobbinModel();
  const ready = drive({ model, settings: `${STATES.run} level=180` });
  const netlists: string[] = [];
  let steps = 0;
  const begun = ready.copy();
  begun.setControl('key', 'start');
  begun.advance(CRANK_MS, (world) => {
    steps++;
    if (steps % SPICE_NETWORKS === 1) netlists.push(netlistOf(world, 'cranking'));
  });
  if (begun.stateOf('engine') !== 'stopped' || !(begun.quantityOf('rpm') > 100)) throw new Error('it does not crank');
  const times = await timed(
    () => {
      const world = ready.copy();
      world.setControl('key', 'start');
      world.advance(CRANK_MS);
    },
    CRANKINGS,
    3,
  );
  const one = await spiceMs(netlists);
  const unit = `ms for ${CRANK_MS / 1000} s at the starter, ${steps} steps`;
  return [
    figure('solve.cranking', median(times), unit, CRANKINGS, {
      name: `${SPICE}: networks along the way, times ${steps}`,
      value: one * steps,
    }),
  ];
}

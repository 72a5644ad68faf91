/** Node by node along the current's path: this machine beside a sound one, in the state of the complaint. */
import { firstBench, type JobSpec, operatorZone, Rig } from '../job/index.ts';
import { trialSteps } from '../job/steps.ts';
import type { Model, StaircaseSpec, World } from '../machine/index.ts';

export interface Stair {
  point: string;
  /** Volts against the staircase's black point. */
  here: number;
  sound: number;
}

export interface Staircase {
  id: string;
  title: string;
  stairs: Stair[];
}

export function staircasesOf(model: Model, job: JobSpec): Staircase[] {
  const here = inComplaint(model, job, Rig.arriving(model, job.faults, job.arrival));
  const sound = inComplaint(model, job, Rig.arriving(model, [], {}));
  return staircasesFor(model, job).map(({ id, title, black, points }) => {
    const [low, good] = [here, sound].map((rig) => loaded(rig.world, points[0], black));
    const stairs = points.map((point) => ({
      point,
      here: hundredth(low.voltsBetween(point, black)),
      sound: hundredth(good.voltsBetween(point, black)),
    }));
    return { id, title, stairs };
  });
}

/** A way that the controls of the complaint don't feed shows nothing, not even on a sound machine. */
const staircasesFor = (model: Model, job: JobSpec): StaircaseSpec[] =>
  model.book.staircases.filter(({ controls }) =>
    controls.every(([id, value]) => job.complaint[0]?.controls.some(([c, v]) => c === id && v === value)),
  );

/** The moment of the next second at which the supply stands lowest: where a contact chatters, the one with it closed. */
function loaded(world: World, supply: string, black: string): World {
  let lowest = world.copy();
  world.copy().advance(CHATTER_MS, (now) => {
    if (now.voltsBetween(supply, black) < lowest.voltsBetween(supply, black)) lowest = now.copy();
  });
  return lowest;
}

/** Longer than a chattering contact takes from one closing to the next, ms. */
const CHATTER_MS = 500;

const hundredth = (volts: number): number => Math.round(volts * 100) / 100;

/** The machine at the moment at which a reading of the first complaint would be taken. */
function inComplaint(model: Model, job: JobSpec, rig: Rig): Rig {
  const bench = { ...firstBench(model.book), zone: operatorZone(model.book) };
  const controls = job.complaint[0]?.controls ?? [];
  const steps = trialSteps(model.book, bench, (id) => rig.world.controlOf(id), controls);
  const held = steps.findIndex((step) => 'listen' in step);
  rig.run(held < 0 ? steps : steps.slice(0, held - 1));
  return rig;
}

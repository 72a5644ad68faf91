/** Node by node along the current's path: this machine beside a sound one, in the state of the complaint. */
import { firstBench, type JobSpec, operatorZone, Rig } from '../job/index.ts';
import { trialSteps } from '../job/steps.ts';
import type { Model } from '../machine/index.ts';

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
  return model.book.staircases.map(({ id, title, black, points }) => ({
    id,
    title,
    stairs: points.map((point) => ({
      point,
      here: hundredth(here.world.voltsBetween(point, black)),
      sound: hundredth(sound.world.voltsBetween(point, black)),
    })),
  }));
}

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

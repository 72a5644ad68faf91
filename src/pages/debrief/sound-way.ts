/** The job's own sound way, worked through like any attempt: what it costs and how fast it narrows the suspects. */
import { beliefOver, type Prior } from '../../diagnosis/index.ts';
import type { Grade } from '../../grading/index.ts';
import { Attempt, isRefusal, type JobSpec } from '../../job/index.ts';
import type { Model } from '../../machine/index.ts';

export interface Work {
  verb: string;
  target: string;
  tenths: number;
  price: number;
}

export interface SoundBill {
  tenths: number;
  price: number;
  work: Work[];
}

/** A share of the belief above which a target still counts as a suspect, as in the grade. */
const COUNTS = 0.01;

export function walkSoundWay(model: Model, job: JobSpec): Attempt {
  const attempt = new Attempt(model, job);
  for (const action of job.path) if (isRefusal(attempt.act(action))) break;
  return attempt;
}

export function workOf(attempt: Attempt): Work[] {
  return attempt.records.flatMap(({ entry, cost }) =>
    entry.action.do === 'repair' ? [{ verb: entry.action.verb, target: entry.action.target, ...cost }] : [],
  );
}

export const billOfWay = (attempt: Attempt): SoundBill => ({
  tenths: attempt.tenths,
  price: attempt.price,
  work: workOf(attempt),
});

/** Suspects left after each step that told something, counted as the grade counts them. */
export function lineOfWay(attempt: Attempt, prior: Prior): Grade['line'] {
  const { steps } = beliefOver(attempt, prior);
  const line: Grade['line'] = [];
  const first = steps[0];
  if (first !== undefined) line.push([-1, 0, [...first.before.values()].filter((share) => share > COUNTS).length]);
  let tenths = 0;
  for (const { entry, cost } of attempt.records) {
    tenths += cost.tenths;
    const step = steps[entry.index];
    if (step?.informative) line.push([entry.index, tenths, step.left]);
  }
  return line;
}

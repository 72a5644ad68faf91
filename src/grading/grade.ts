/** From a replayed attempt to a grade: every point lost with its moment, its evidence and the better choice. */
import { once } from '../circuit/index.ts';
import { type Belief, bothBeliefs, type Prior, suspectsOf } from '../diagnosis/index.ts';
import { Attempt, billOf, firstBench, isRefusal, type JobSpec, lacking, type Step } from '../job/index.ts';
import type { Model } from '../machine/index.ts';
import { reviewCloseOut } from './close-out.ts';
import type { Finding } from './finding.ts';
import { reviewRepairs } from './repairs.ts';
import { CRITERIA, type Criterion, DEFAULT_RUBRIC, type Rubric } from './rubric.ts';
import { reviewSafety } from './safety.ts';
import { type Staircase, staircasesOf } from './staircase.ts';
import { reviewTests } from './tests.ts';

export interface CriterionGrade {
  points: number;
  of: number;
}

export interface Grade {
  engine: string;
  criteria: Record<Criterion, CriterionGrade>;
  total: number;
  result: 'pass' | 'not-yet' | 'fail';
  prior: Prior;
  /** Is the machine mended, or the honest ending right? */
  solved: boolean;
  critical: boolean;
  bill: number;
  par: number;
  tenths: number;
  findings: Finding[];
  good: Finding[];
  /** Suspects left after each entry that told something: [entry, shop minutes in tenths, suspects]. */
  line: [entry: number, tenths: number, left: number][];
  staircases: Staircase[];
}

/** The better of the grades under both priors, so that nobody loses points for a defensible belief. */
export function gradeOf(attempt: Attempt, rubric: Rubric = DEFAULT_RUBRIC): Grade {
  const suspects = suspectsOf(attempt.model, attempt.job);
  const beliefs = bothBeliefs(attempt, suspects);
  const usual = gradeUnder(attempt, beliefs.usual, 'usual', rubric);
  const equal = gradeUnder(attempt, beliefs.equal, 'equal', rubric);
  return equal.total > usual.total ? equal : usual;
}

function gradeUnder(attempt: Attempt, belief: Belief, prior: Prior, rubric: Rubric): Grade {
  const { weights } = rubric;
  const safety = reviewSafety(attempt, rubric);
  const tests = reviewTests(attempt, belief, rubric);
  const repairs = reviewRepairs(attempt, belief, rubric);
  const closing = reviewCloseOut(attempt, rubric);
  const par = parBill(attempt);
  const bill = billOf(attempt.model.book, attempt.tenths, attempt.price);
  const solved = isSolved(attempt);
  const time = solved ? timePoints(bill, par, rubric) : notTimed(rubric);
  const counted = tests.useful + tests.wasted.length;
  const points: Record<Criterion, number> = {
    safety: safety.points,
    order: counted === 0 ? 0 : (weights.order * tests.useful) / counted,
    proof: solved ? repairs.proofPoints : 0,
    parts: repairs.partsPoints,
    time: time.points,
    closeOut: closing.points,
  };
  const criteria = Object.fromEntries(
    CRITERIA.map((c) => [c, { points: tenth(points[c]), of: weights[c] }]),
  ) as Grade['criteria'];
  const total = tenth(CRITERIA.reduce((sum, c) => sum + criteria[c].points, 0));
  const result = safety.critical ? 'fail' : solved && total >= rubric.passMark ? 'pass' : 'not-yet';
  const all = [
    ...safety.findings,
    ...tests.wasted,
    ...tests.findings,
    ...repairs.findings,
    ...time.findings,
    ...closing.findings,
  ];
  const isGood = (f: Finding) => f.lost === 0;
  const byMoment = (a: Finding, b: Finding) => a.timeMs - b.timeMs;
  return {
    engine: attempt.log.header.engine,
    criteria,
    total,
    result,
    prior,
    solved,
    critical: safety.critical,
    bill,
    par,
    tenths: attempt.tenths,
    findings: all.filter((f) => !isGood(f)).sort(byMoment),
    good: [...all.filter(isGood), ...tests.good].sort(byMoment),
    line: suspectsLine(attempt, belief),
    staircases: staircasesOf(attempt.model, attempt.job),
  };
}

const tenth = (x: number): number => Math.round(x * 10) / 10;

/** The machine does what a sound one does, and the attempt ended as this job should end. */
function isSolved(attempt: Attempt): boolean {
  const { job, rig } = attempt;
  const last = attempt.records[attempt.records.length - 1];
  const ending = last?.entry.action.do === 'finish' ? last.entry.action.ending : null;
  if (ending !== job.ending) return false;
  // What was left off or open is the close-out's; here everything is put back, but for what the job itself had off.
  const { book } = attempt.model;
  const usual = book.controls.filter((c) => !c.surroundings && job.arrival.controls?.[c.id] === undefined);
  const putBack = usual.map((c): Step => ({ control: c.id, value: c.initial }));
  const whole = rig.copy();
  whole.run([{ hands: firstBench(book) }, ...putBack]);
  return job.complaint.every((symptom) => lacking(whole, symptom).length === 0);
}

/** The job's own sound way, worked through like any attempt. */
export function soundWay(model: Model, job: JobSpec): Attempt {
  const attempt = new Attempt(model, job);
  for (const action of job.path) if (isRefusal(attempt.act(action))) break;
  return attempt;
}

const pars = once((model: Model) =>
  once((job: JobSpec): number => {
    const sound = soundWay(model, job);
    return billOf(model.book, sound.tenths, sound.price);
  }),
);

/** Bill of the job's own sound way, worked through like any attempt. */
export const parBill = (attempt: Attempt): number => pars(attempt.model)(attempt.job);

function timePoints(bill: number, par: number, rubric: Rubric): { points: number; findings: Finding[] } {
  const { full, none } = rubric.time;
  const weight = rubric.weights.time;
  const times = par > 0 ? bill / par : 1;
  const share = times <= full ? 1 : Math.max(0, (none - times) / (none - full));
  const lost = tenth(weight * (1 - share));
  const finding: Finding = {
    code: lost > 0 ? 'over-par' : 'within-par',
    criterion: 'time',
    entry: null,
    timeMs: Number.MAX_SAFE_INTEGER,
    lost,
    params: { bill: tenth(bill), par: tenth(par) },
  };
  return { points: weight * share, findings: [finding] };
}

/** A machine that isn't mended was never cheap. */
function notTimed(rubric: Rubric): { points: number; findings: Finding[] } {
  const lost = rubric.weights.time;
  const at = { entry: null, timeMs: Number.MAX_SAFE_INTEGER };
  return { points: 0, findings: [{ code: 'not-timed', criterion: 'time', lost, params: {}, ...at }] };
}

/** Suspects left after each entry that told something. */
export function suspectsLine(attempt: Attempt, belief: Belief): Grade['line'] {
  let tenths = 0;
  const line: Grade['line'] = [];
  const first = belief.steps[0];
  if (first !== undefined) line.push([-1, 0, [...first.before.values()].filter((p) => p > 0.01).length]);
  for (const record of attempt.records) {
    tenths += record.cost.tenths;
    const step = belief.steps[record.entry.index];
    if (step.informative) line.push([record.entry.index, tenths, step.left]);
  }
  return line;
}

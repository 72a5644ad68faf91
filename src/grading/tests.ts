/** The order of tests: which ones could tell nothing, and which habits are free. */
import type { Belief } from '../diagnosis/index.ts';
import type { Attempt, Record as Done } from '../job/index.ts';
import type { Finding } from './finding.ts';
import type { Rubric } from './rubric.ts';

/** Actions that are tests: something could be learned from them. */
function isTest(record: Done): boolean {
  const { action, seen } = record.entry;
  if (action.do === 'read' || action.do === 'look' || action.do === 'wiggle' || action.do === 'exchange') return true;
  return action.do === 'operate' && seen.display !== undefined && springs(record);
}

/** A control held for a test, not one merely put back. */
const springs = (record: Done): boolean => record.steps.some((step) => 'listen' in step);

/** A name for "the same test again with nothing changed in between". */
function sameTest(record: Done): string {
  const { action, seen } = record.entry;
  const { leads, dial, redJack, instrument, unplugged, lifted, pulled, exchanged } = record.after;
  return JSON.stringify([
    action,
    seen.display?.text,
    leads,
    dial,
    redJack,
    instrument,
    unplugged,
    lifted,
    pulled,
    exchanged,
  ]);
}

/** Habits of a careful technician, free once each: battery, its draw at rest, main grounds, a first look, the meter. */
function habitOf(attempt: Attempt, record: Done): string | null {
  const { action } = record.entry;
  if (action.do === 'look') return `look:${action.at}`;
  const { dial, redJack, leads } = record.after;
  const { red, black } = leads;
  if (red === null || black === null) return null;
  // What drains a battery at rest is asked wherever one was found flat (common practice, no source).
  if (dial === 'amps' && redJack === 'amps') return 'draw';
  const { book } = attempt.model;
  const battery = book.reference.split('.')[0];
  if (red.startsWith(`${battery}.`) && black.startsWith(`${battery}.`)) return `battery:${action.do}`;
  const grounds = new Set([book.reference, ...book.grounds.map((g) => `${g.part}.L`)]);
  if (grounds.has(red) && grounds.has(black)) return `ground:${red}:${black}`;
  if (red === black) return 'meter';
  return null;
}

export interface TestReview {
  useful: number;
  wasted: Finding[];
  good: Finding[];
  /** About the whole attempt. */
  findings: Finding[];
}

/** Goes through the tests before the last repair; after it, proof is never redundant. */
export function reviewTests(attempt: Attempt, belief: Belief, rubric: Rubric): TestReview {
  const firstRepair = attempt.records.findIndex((r) => r.entry.action.do === 'repair');
  const end = firstRepair < 0 ? attempt.records.length : firstRepair;
  const review: TestReview = { useful: 0, wasted: [], good: [], findings: [] };
  const done = new Set<string>();
  const habits = new Set<string>();
  for (const record of attempt.records.slice(0, end)) {
    if (!isTest(record)) continue;
    judge(attempt, belief, rubric, record, review, done, habits);
  }
  const each = review.useful + review.wasted.length;
  const lost = each === 0 ? 0 : rubric.weights.order / each;
  for (const finding of review.wasted) finding.lost = Math.round(lost * 10) / 10;
  if (each === 0) review.findings.push(noTests(rubric));
  return review;
}

/** Nothing was tested before the first repair: all points of this criterion are lost. */
function noTests(rubric: Rubric): Finding {
  const at = { entry: null, timeMs: Number.MAX_SAFE_INTEGER };
  return { code: 'no-tests', criterion: 'order', lost: rubric.weights.order, params: {}, ...at };
}

function judge(
  attempt: Attempt,
  belief: Belief,
  rubric: Rubric,
  record: Done,
  review: TestReview,
  done: Set<string>,
  habits: Set<string>,
): void {
  const step = belief.steps[record.entry.index];
  const name = sameTest(record);
  const habit = habitOf(attempt, record);
  const again = done.has(name);
  done.add(name);
  const free = habit !== null && !habits.has(habit);
  if (habit !== null) habits.add(habit);
  const found = record.seen.codes.some((code) => code.startsWith('sign:'));
  const finding = (code: Finding['code'], params: Finding['params']): Finding => ({
    code,
    criterion: 'order',
    entry: record.entry.index,
    timeMs: record.entry.timeMs,
    lost: 0,
    params,
  });
  // Nearly all suspects foretold the outcome, and it came: where the rare one came instead, the test did tell.
  const nothing = step.foreseen >= rubric.foreseen && step.moved <= 1 - rubric.foreseen;
  if ((again || nothing) && !free && !found) {
    review.wasted.push(finding(again ? 'asked-twice' : 'told-nothing', { left: step.left }));
    return;
  }
  review.useful++;
  const before = [...step.before.values()].filter((p) => p > 0.01).length;
  if (before >= 2 && step.left <= before / 1.6) review.good.push(finding('halved', { before, left: step.left }));
}

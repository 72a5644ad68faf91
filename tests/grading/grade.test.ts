/** Grades of whole attempts: the sound way passes, the swapper does not, and each point lost has its reason. */
import { describe, expect, test, vi } from 'vitest';
import type { Belief } from '../../src/diagnosis/index.ts';
import { CRITERIA, DEFAULT_RUBRIC, type Grade, gradeOf, parBill } from '../../src/grading/index.ts';
import { reviewRepairs } from '../../src/grading/repairs.ts';
import { staircasesOf } from '../../src/grading/staircase.ts';
import { type Action, type Attempt, billOf } from '../../src/job/index.ts';
import { act, actionsOf, attemptAt, JOB_IDS, ownWay, theJob, workedAt } from '../job/at-work.ts';
import { hobbinBook, hobbinModel } from '../support/hobbin.ts';

// The suspects of a complaint are the same at every grading; working them out takes most of the time.
vi.mock('../../src/diagnosis/index.ts', async (original) => {
  const real = await original<typeof import('../../src/diagnosis/index.ts')>();
  const { suspectsOnce } = await import('../diagnosis/suspects-once.ts');
  return {
    ...real,
    suspectsOf: (...[model, job]: Parameters<typeof real.suspectsOf>) => suspectsOnce(model, job, real.suspectsOf),
  };
});

const RELEASE = process.env.OHMYARD_RELEASE !== undefined;
/** Few suspects, so that it is graded in a second: a starter whose contact has failed. */
const QUICK = 'job-12';

const sumOf = (grade: Grade): number => CRITERIA.reduce((sum, c) => sum + grade.criteria[c].points, 0);
const codesOf = (grade: Grade): string[] => grade.findings.map((f) => f.code);

/** The sound way of a job, with its actions changed first. */
function changedWay(id: string, edit: (path: Action[]) => Action[]): Attempt {
  const attempt = attemptAt(id);
  for (const action of edit([...theJob(id).path])) act(attempt, action);
  return attempt;
}

const without = (path: Action[], test: (action: Action) => boolean): Action[] => path.filter((a) => !test(a));

/** Puts actions in before the first one that is meant. */
function before(path: Action[], test: (action: Action) => boolean, text: string): Action[] {
  const at = path.findIndex(test);
  return [...path.slice(0, at), ...actionsOf(text), ...path.slice(at)];
}

/** A belief of nobody in particular, for what doesn't turn on it. */
const nothingKnown = (attempt: Attempt): Belief => ({
  suspects: [],
  steps: attempt.records.map((r) => {
    const nobody = new Map<string, number>();
    return { index: r.entry.index, before: nobody, after: nobody, left: 0, informative: false, foreseen: 1, moved: 0 };
  }),
  mends: () => 0,
});

const sound = gradeOf(ownWay(QUICK));

test('the weights sum to 100, and the shares of the close-out to one', () => {
  expect(CRITERIA.reduce((sum, c) => sum + DEFAULT_RUBRIC.weights[c], 0)).toBe(100);
  const { verified, interlocks, closed, writeUp } = DEFAULT_RUBRIC.closeOut;
  expect(verified + interlocks + closed + writeUp).toBeCloseTo(1, 12);
});

/** All twelve take minutes; before a release each is graded. */
const GRADED = RELEASE ? JOB_IDS : ['job-02', QUICK];

test.each(GRADED)('%s: its own way passes with 85 or more', { timeout: 600_000 }, (id) => {
  const grade = gradeOf(ownWay(id));
  expect(grade).toMatchObject({ result: 'pass', solved: true, critical: false });
  expect(grade.total).toBeGreaterThanOrEqual(85);
  expect(grade.criteria.safety).toEqual({ points: 20, of: 20 });
  expect(grade.criteria.closeOut).toEqual({ points: 10, of: 10 });
  expect(grade.criteria.time).toEqual({ points: 5, of: 5 });
});

describe('a grade', () => {
  test('is the sum of its criteria, none over its weight', () => {
    for (const grade of [sound, gradeOf(workedAt(QUICK, 'finish not-safe'))]) {
      expect(sumOf(grade)).toBeCloseTo(grade.total, 6);
      for (const c of CRITERIA) {
        expect(grade.criteria[c].of).toBe(DEFAULT_RUBRIC.weights[c]);
        expect(grade.criteria[c].points).toBeGreaterThanOrEqual(0);
        expect(grade.criteria[c].points).toBeLessThanOrEqual(grade.criteria[c].of);
      }
    }
  });

  test('is the same from the same log', () => {
    expect(gradeOf(ownWay(QUICK))).toEqual(sound);
  });

  test('names its engine, and par is the bill of the sound way', () => {
    const attempt = ownWay(QUICK);
    expect(sound.engine).toBe(attempt.log.header.engine);
    expect(sound.bill).toBe(billOf(hobbinBook(), attempt.tenths, attempt.price));
    expect(sound.par).toBe(sound.bill);
    expect(parBill(attempt)).toBe(sound.par);
  });

  test('every finding has its moment and what it cost', () => {
    for (const finding of sound.findings) expect(finding.lost).toBeGreaterThan(0);
    for (const finding of sound.good) expect(finding.lost).toBe(0);
    expect(sound.good.map((f) => f.code)).toEqual(expect.arrayContaining(['safe', 'verified', 'cause-right']));
  });

  test('shows how few were left, and never more than at first', () => {
    const left = sound.line.map(([, , suspects]) => suspects);
    expect(sound.line[0].slice(0, 2)).toEqual([-1, 0]);
    expect(Math.min(...left)).toBeLessThan(left[0]);
    expect(sound.line.map(([entry]) => entry)).toEqual(sound.line.map(([entry]) => entry).sort((a, b) => a - b));
  });

  test("has the book's staircases, this machine beside a sound one", () => {
    expect(sound.staircases.map((s) => s.id)).toEqual(hobbinBook().staircases.map((s) => s.id));
  });

  test('a staircase that the complaint does not feed is left out', () => {
    const [cause] = theJob('job-02').causes;
    const shown = staircasesOf(hobbinModel(), theJob('job-02'));
    expect([cause.at, shown.map((s) => s.id)]).toEqual(['S1', ['feed']]);
    // Open at the disconnect: the battery's volts before it, none after.
    expect(shown[0].stairs.slice(1, 3).map((s) => s.here)).toEqual([expect.closeTo(12.65, 1), 0]);
  });
});

/** Replaces the usual wrong part at once, then the right one; proves, closes and writes up as everybody does. */
function swapper(): Attempt {
  const path = theJob(QUICK).path.filter((a) => !['lead', 'read', 'dial', 'look', 'pull', 'refit'].includes(a.do));
  const untested = without(path, (a) => a.do === 'helper' || (a.do === 'precaution' && a.id === 'leadsClipped'));
  const cranks = without(untested, (a) => a.do === 'operate' && a.control === 'key');
  const swap = 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4; operate iso 0; ';
  const first = before(cranks, (a) => a.do === 'walk', `${swap}repair replace G1; operate iso 1; close AC4`);
  const attempt = attemptAt(QUICK);
  for (const action of first) act(attempt, action);
  return attempt;
}

describe('a swapper', () => {
  const grade = gradeOf(swapper());

  test('does not pass and is far below the sound way, though the machine runs', () => {
    expect(grade.solved).toBe(true);
    expect(grade.critical).toBe(false);
    expect(grade.result).not.toBe('pass');
    expect(grade.total).toBeLessThan(sound.total - 30);
  });

  test('is told which part was needless and that the right one was not proved', () => {
    expect(codesOf(grade)).toEqual(expect.arrayContaining(['repair-needless', 'repair-unproved']));
    const needless = grade.findings.find((f) => f.code === 'repair-needless');
    expect(needless?.params).toMatchObject({ target: theJob(QUICK).wrongSwap, verb: 'replace' });
  });
});

test('without chocks it is a fail, whatever else was right', () => {
  const grade = gradeOf(changedWay(QUICK, (path) => without(path, (a) => a.do === 'precaution' && a.id === 'chocks')));
  expect(grade).toMatchObject({ result: 'fail', solved: true, critical: true });
  expect(codesOf(grade)).toContain('critical-missing');
  expect(grade.total).toBeGreaterThan(DEFAULT_RUBRIC.passMark);
});

test('nothing tested at all: the criterion says why it is empty', () => {
  const grade = gradeOf(swapper());
  const order = grade.findings.filter((f) => f.criterion === 'order');
  expect(grade.criteria.order.points).toBe(0);
  expect(order.reduce((sum, f) => sum + f.lost, 0)).toBe(DEFAULT_RUBRIC.weights.order);
});

test('points lost for safety are no more than there are', () => {
  const grade = gradeOf(changedWay('job-12', (path) => without(path, (a) => a.do === 'precaution')));
  const lost = grade.findings.filter((f) => f.criterion === 'safety').reduce((sum, f) => sum + f.lost, 0);
  expect(lost).toBeCloseTo(DEFAULT_RUBRIC.weights.safety - grade.criteria.safety.points, 0);
});

test('a second fuse with the short still there costs points of the parts', () => {
  const blows = 'repair fuse F10; close AC1; with helperClear; operate key start; operate key off; open AC1';
  const first = (a: Action) => a.do === 'repair' && a.verb === 'fuse';
  const again = changedWay('job-03', (path) => before(path, first, `${blows}; `));
  const review = reviewRepairs(again, nothingKnown(again), DEFAULT_RUBRIC);
  expect(review.findings.filter((f) => f.code === 'fuse-again')).toHaveLength(1);
  const once = ownWay('job-03');
  expect(reviewRepairs(once, nothingKnown(once), DEFAULT_RUBRIC).findings.map((f) => f.code)).not.toContain(
    'fuse-again',
  );
});

test('the same reading again, with nothing changed, costs points of order', () => {
  const isNext = (a: Action) => a.do === 'lead' && a.point === 'M1.50';
  // Three times: with the key in run the battery empties, and its last digit may fall between the first two.
  const grade = gradeOf(changedWay(QUICK, (path) => before(path, isNext, 'read; read; read; helper call')));
  expect(codesOf(grade)).toContain('asked-twice');
  expect(grade.criteria.order.points).toBeLessThan(sound.criteria.order.points);
});

test('a repair that is not verified costs points of the close-out', () => {
  const looksAtDash: Action = { do: 'operate', control: 'key', value: 'run' };
  const grade = gradeOf(changedWay(QUICK, (path) => path.map((a) => (a.do === 'verify' ? looksAtDash : a))));
  expect(grade.criteria.closeOut.points).toBe(5);
  expect(codesOf(grade)).toEqual(expect.arrayContaining(['not-verified', 'interlocks-not-tried']));
});

test('chocks that are left under the wheels and a hood that is left open cost points of the close-out', () => {
  const left = (a: Action) => (a.do === 'close' && a.access === 'AC5') || (a.do === 'precaution' && !a.on);
  const grade = gradeOf(changedWay(QUICK, (path) => without(path, left)));
  expect(grade.findings.find((f) => f.code === 'left-open')?.params).toEqual({ what: 'AC5 chocks' });
  expect(grade.criteria.closeOut.points).toBe(8);
});

test('a cause written up wrongly costs its share, the right place with the wrong mode half of it', () => {
  const written = (cause: string, mode: string) =>
    gradeOf(changedWay(QUICK, (path) => path.map((a): Action => (a.do === 'writeUp' ? { ...a, cause, mode } : a))))
      .criteria.closeOut.points;
  expect(written('G1', 'discharged')).toBe(7);
  expect(written('M1', 'open')).toBe(8.5);
  expect(written('M1', 'weak')).toBe(10);
});

test('nothing done and an ending that is not right is no pass and earns no proof, no time, no order', () => {
  const grade = gradeOf(workedAt(QUICK, 'finish not-safe'));
  expect(grade).toMatchObject({ result: 'not-yet', solved: false });
  const { order, proof, time } = grade.criteria;
  expect([order.points, proof.points, time.points]).toEqual([0, 0, 0]);
});

test('far over par the points for time are gone', () => {
  const idle = Array.from({ length: 220 }, () => 'ask when').join('; ');
  const grade = gradeOf(changedWay(QUICK, (path) => before(path, (a) => a.do === 'walk', idle)));
  expect(grade.criteria.time.points).toBeLessThan(5);
  expect(codesOf(grade)).toContain('over-par');
});

describe('a job with nothing broken', () => {
  test('is solved by saying so', () => {
    expect(gradeOf(ownWay('job-02'))).toMatchObject({ solved: true, result: 'pass' });
  });

  test.each(['repaired', 'cannot-duplicate'] as const)('and not by %s', (ending) => {
    const grade = gradeOf(
      changedWay('job-02', (path) => path.map((a): Action => (a.do === 'finish' ? { ...a, ending } : a))),
    );
    expect(grade).toMatchObject({ solved: false, result: 'not-yet' });
    expect(grade.criteria.time.points).toBe(0);
  });
});

/** Which tests told nothing: judged by what the suspects foretold and by what came. */
import { expect, test } from 'vitest';
import type { Belief, Step } from '../../src/diagnosis/index.ts';
import { DEFAULT_RUBRIC } from '../../src/grading/index.ts';
import { reviewTests } from '../../src/grading/tests.ts';
import { workedAt } from '../job/at-work.ts';

/** One reading: the starter's stud against its own case. */
const attempt = workedAt(
  'job-12',
  'with chocks; walk ENGL; with clothing; open AC5; dial volts-dc; red M1.30; black M1.31; read',
);

/** A belief of two suspects of which all but `rare` foretold one and the same; `moved` went over to the other. */
function beliefWith(rare: number, moved: number): Belief {
  const before = new Map([
    ['one', 1 - rare],
    ['other', rare],
  ]);
  const after = new Map([
    ['one', 1 - rare - moved],
    ['other', rare + moved],
  ]);
  const steps = attempt.records.map(
    (r): Step => ({ index: r.entry.index, before, after, left: 2, informative: true, foreseen: 1 - rare, moved }),
  );
  return { suspects: [], steps, mends: () => 0 };
}

const wasted = (rare: number, moved: number): string[] =>
  reviewTests(attempt, beliefWith(rare, moved), DEFAULT_RUBRIC).wasted.map((f) => f.code);

test('a test whose outcome all suspects foretold told nothing', () => {
  expect(wasted(0, 0)).toEqual(['told-nothing']);
});

test('a test that could have told two halves apart is a good one, whatever came', () => {
  expect(wasted(0.5, 0)).toEqual([]);
  expect(wasted(0.5, 0.4)).toEqual([]);
});

test('the outcome that hardly any suspect foretold tells the most: no point is lost for it', () => {
  expect(wasted(0.004, 0.7)).toEqual([]);
});

test('asking once what drains the battery costs nothing, whatever it tells', () => {
  const drain = workedAt(
    'job-01',
    'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4; operate iso 0; lift 001A@from; ' +
      'operate iso 1; dial amps; jack amps; red 001A@from; black G1.-; read; read',
  );
  const nobody = new Map([['one', 1]]);
  const steps = drain.records.map(
    (r): Step => ({
      index: r.entry.index,
      before: nobody,
      after: nobody,
      left: 1,
      informative: true,
      foreseen: 1,
      moved: 0,
    }),
  );
  const { wasted } = reviewTests(drain, { suspects: [], steps, mends: () => 0 }, DEFAULT_RUBRIC);
  expect(wasted.map((f) => f.code)).toEqual(['asked-twice']);
});

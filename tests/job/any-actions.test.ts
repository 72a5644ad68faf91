/** Whatever a student does, and in whatever order, the attempt answers and can be replayed. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Action, Attempt, isRefusal, replay } from '../../src/job/index.ts';
import { readAttempt } from '../../src/scenario/read-attempt.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { possible } from '../support/possible.ts';
import { anyAttempts, CHOICE } from './any-actions.ts';
import { JOB_IDS, theJob } from './at-work.ts';

const ACTIONS = 50;
const RUNS = process.env.OHMYARD_RELEASE === undefined ? 120 : 10_000;
/** A reading is due when the leads are on something and the instrument is on. */
const readingIsDue = (attempt: Attempt): boolean => {
  const { leads, instrument } = attempt.bench;
  if (leads.red === null || leads.black === null) return false;
  return instrument === 'lamp' || attempt.bench.dial !== 'off';
};

function tryAll(id: string, actions: readonly Action[]): void {
  const attempt = new Attempt(hobbinModel(), theJob(id));
  attempt.act({ do: 'start' });
  for (const [i, wish] of actions.entries()) {
    const action = possible(attempt, wish, i);
    const { timeMs, tenths, bench } = attempt;
    const refusal = attempt.refusal(action);
    const result = attempt.act(action);
    expect(isRefusal(result)).toBe(refusal !== null);
    if (isRefusal(result)) {
      expect(result).toEqual(refusal);
      expect([attempt.timeMs, attempt.tenths, attempt.bench]).toEqual([timeMs, tenths, bench]);
      continue;
    }
    expect(Number.isInteger(result.entry.timeMs)).toBe(true);
    expect(result.entry.timeMs).toBeGreaterThanOrEqual(timeMs);
    if (action.do !== 'read' || !readingIsDue(attempt)) continue;
    const text = result.seen.display?.text ?? '';
    expect(text).toMatch(/^(-?\d+\.\d+|OL|dark|glimmer|dim|bright)$/);
    const { value } = result.seen;
    if (attempt.bench.instrument === 'meter') expect(value === null || Number.isFinite(value)).toBe(true);
  }
  const read = readAttempt('attempt.json', JSON.parse(JSON.stringify(attempt.log)));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const again = replay(hobbinModel(), theJob(id), read.log);
  expect(again.differences).toEqual([]);
  expect(again.attempt.log).toEqual(attempt.log);
}

test(
  `${RUNS} attempts of ${ACTIONS} random actions`,
  () => {
    fc.assert(
      anyAttempts(JOB_IDS, hobbinModel(), ACTIONS, (id, actions) => tryAll(id, actions)),
      { numRuns: RUNS, seed: CHOICE },
    );
  },
  RUNS * 2000,
);

/** Evidence of every function and button of the meter: true readings leave the truth a suspect, and a button is no second witness. */
import { expect, test } from 'vitest';
import { beliefOver, type Suspect, suspectsOf } from '../../src/diagnosis/index.ts';
import { type Attempt, pointsHere } from '../../src/job/index.ts';
import { theJob, work, workedAt } from '../job/at-work.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { sample } from '../support/list.ts';
import { sharesOf, suspectsOnce } from './suspects-once.ts';

const DIALS = ['ohms', 'continuity', 'diode', 'volts-lo', 'volts-dc'];
const BUTTONS = ['range 0', 'range 1', 'zero on'];

function rivalsOf(id: string): Suspect[] {
  const all = suspectsOnce(hobbinModel(), theJob(id), suspectsOf);
  const { at } = theJob(id).faults[0];
  return [...all.filter((s) => s.at === at), ...sample(all, 20, 5).filter((s) => s.at !== at)];
}

/** Each function between some two points, as the machine stands and with its battery off. */
function wander(id: string, choice: number): Attempt {
  const attempt = workedAt(id, 'walk ENGL; with clothing; open AC5');
  const here = pointsHere(hobbinModel(), attempt.bench);
  for (const [i, dial] of DIALS.entries()) {
    const [red, black] = sample(here, 2, choice + i);
    work(attempt, `dial ${dial}; red ${red}; black ${black}; read`);
    const [button] = sample(BUTTONS, 1, choice + i);
    // Overload is not taken off: there is nothing to let go of then.
    work(attempt, 'zero on');
    attempt.act({ do: 'zero', on: false });
    if (dial.startsWith('volts') || dial === 'ohms') work(attempt, `${button}; read`);
  }
  return attempt;
}

test.each(['job-05', 'job-09'])('%s: whatever the dial and the buttons are at, the truth stays a suspect', (id) => {
  const { at } = theJob(id).faults[0];
  const rivals = rivalsOf(id);
  const start = sharesOf(rivals).get(at) ?? 0;
  for (const choice of [48_271, 15_485_863, 49_979_687]) {
    const attempt = wander(id, choice);
    expect(attempt.records.filter((r) => r.seen.display !== undefined).length).toBeGreaterThan(10);
    const { steps } = beliefOver(attempt, 'usual', rivals);
    expect(Math.min(...steps.map((step) => step.after.get(at) ?? 0))).toBeGreaterThan(start / 2);
  }
});

test('to zero the meter, or to let go of it, tells nothing that the reading before it has not told', () => {
  const attempt = workedAt('job-05', 'walk ENGL; with clothing; open AC5; dial volts-dc');
  work(attempt, 'red K1.30; black GND2.L; read; zero on; zero off; read');
  const { steps } = beliefOver(attempt, 'usual', rivalsOf('job-05'));
  expect(steps.slice(-4).map((step) => step.informative)).toEqual([true, false, false, false]);
});

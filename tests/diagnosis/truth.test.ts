/** True readings never rule the truth out, whatever is measured and in whatever order; a sound way singles it out. */
import { expect, test } from 'vitest';
import { beliefOver, type Suspect, suspectsOf } from '../../src/diagnosis/index.ts';
import { type Attempt, isRefusal, pointsHere } from '../../src/job/index.ts';
import { JOB_IDS, ownWay, theJob, work, workedAt } from '../job/at-work.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { sample } from '../support/list.ts';
import { sharesOf, suspectsOnce } from './suspects-once.ts';

const RELEASE = process.env.OHMYARD_RELEASE !== undefined;
const ofJob = (id: string): Suspect[] => suspectsOnce(hobbinModel(), theJob(id), suspectsOf);

/** Places where much can be measured, each with what must be done to get there. */
const PLACES = [
  'walk ENGL; with clothing; open AC5',
  'walk CFUSE; open AC1',
  'walk BDASH; with columnLocked; with panelHeld; open AC2',
  'walk USEAT; with seatStay; open AC3',
  'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4',
];
const GROUNDS = ['GND1.L', 'GND2.L', 'GND3.L', 'GND4.L', 'G1.-'];
const READINGS = 5;
/** Far apart, since near starts of the choice choose alike. */
const CHOICES = [48_271, 1_299_709, 15_485_863, 32_452_843, 49_979_687, 86_028_121];

/** Two leads somewhere within reach, and the key turned to start or a plain reading: five times over, in two places. */
function wander(id: string, choice: number): Attempt {
  const attempt = workedAt(id, 'with chocks; dial volts-dc');
  for (const [i, place] of sample(PLACES, 2, choice).entries()) {
    work(attempt, `${place}; helper call; with leadsClipped`);
    const here = pointsHere(hobbinModel(), attempt.bench);
    const ground = here.find((point) => GROUNDS.includes(point));
    for (const [k, red] of sample(here, READINGS, choice * 31 + i).entries()) {
      attempt.act({ do: 'lead', lead: 'red', point: red });
      attempt.act({ do: 'lead', lead: 'black', point: ground ?? sample(here, 1, choice + k)[0] });
      work(attempt, 'with helperClear');
      const turned = k % 2 === 0 && !isRefusal(attempt.act({ do: 'operate', control: 'key', value: 'start' }));
      if (!turned) attempt.act({ do: 'read' });
    }
    work(attempt, 'red -; black -');
    attempt.act({ do: 'operate', control: 'key', value: 'off' });
  }
  return attempt;
}

/** All suspects take minutes: the truth among a score that is drawn from all, and before a release all of them. */
function rivalsOf(id: string): Suspect[] {
  const all = ofJob(id);
  if (RELEASE) return all;
  const { at } = theJob(id).faults[0];
  const others = all.filter((s) => s.at !== at);
  return [...all.filter((s) => s.at === at), ...sample(others, 20, 5)];
}

test.each(['job-05', 'job-09', 'job-12'])(
  '%s: six wanderings leave the truth a suspect',
  { timeout: 600_000 },
  (id) => {
    const { at } = theJob(id).faults[0];
    const rivals = rivalsOf(id);
    const start = sharesOf(rivals).get(at) ?? 0;
    for (const choice of CHOICES) {
      const attempt = wander(id, choice);
      expect(attempt.records.filter((r) => r.seen.display !== undefined).length).toBeGreaterThan(5);
      const { steps } = beliefOver(attempt, 'usual', rivals);
      expect(steps).toHaveLength(attempt.records.length);
      const least = Math.min(...steps.map((step) => step.after.get(at) ?? 0));
      expect(least).toBeGreaterThan(0.01);
      expect(least).toBeGreaterThan(start / 2);
    }
  },
);

/** Share of the truth when the repair is begun, or at the verdict where there is nothing to repair. */
function shareBeforeRepair(id: string): number {
  const attempt = ownWay(id);
  const begun = attempt.records.findIndex((r) => r.entry.action.do === 'repair');
  const { steps } = beliefOver(attempt, 'usual', ofJob(id));
  const step = steps[begun < 0 ? steps.length - 1 : begun];
  expect([...step.before.values()].reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
  return step.before.get(theJob(id).causes[0].at) ?? 0;
}

test.each(['job-02', 'job-05', 'job-12'])('%s: its own way leaves the truth the likeliest by far', (id) => {
  expect(shareBeforeRepair(id)).toBeGreaterThan(0.5);
});

/** Tried before a release, since it takes minutes. Neighbours that no test on the way tells apart may share the rest. */
test('so it is with at least nine of the twelve', { timeout: 1_200_000 }, () => {
  if (!RELEASE) return;
  const shares = JOB_IDS.map((id) => [id, shareBeforeRepair(id)] as const);
  expect(shares.filter(([, share]) => share > 0.5).length).toBeGreaterThanOrEqual(9);
});

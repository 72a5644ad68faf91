/** Who is suspected of a complaint: the truth always, and nobody who could not bring it about. */
import { describe, expect, test } from 'vitest';
import { hiddenControls, type Suspect, suspectFamilies, suspectsOf } from '../../src/diagnosis/index.ts';
import { type JobSpec, noticed, operatorZone, Rig, type Symptom, shows, tryOut } from '../../src/job/index.ts';
import { JOB_IDS, theJob } from '../job/at-work.ts';
import { hobbinBook, hobbinModel } from '../support/hobbin.ts';
import { sample } from '../support/list.ts';
import { sharesOf, suspectsOnce } from './suspects-once.ts';

const model = hobbinModel();
const targets = (suspects: readonly Suspect[]): Set<string> => new Set(suspects.map((s) => s.at));
const ofJob = (id: string): Suspect[] => suspectsOnce(model, theJob(id), suspectsOf);
/** A dead machine, one that will not crank, and one that clunks: few, many and few suspects. */
const TRIED = ['job-02', 'job-05', 'job-12'];
/** How many of those who are left out are tried. */
const INNOCENT = process.env.OHMYARD_RELEASE === undefined ? 30 : 10_000;

const complains = (job: JobSpec, suspect: Suspect): boolean =>
  suspect.ends.every((rig) => job.complaint.every((symptom) => shows(rig, symptom)));

/** As the job's machine arrives, but with other faults and with what is out of the cab as it should be. */
function machineWith(job: JobSpec, faults: JobSpec['faults'], controls: Record<string, string>): Rig {
  const usual = Object.fromEntries(hiddenControls(hobbinBook()).map((c) => [c.id, c.initial]));
  return Rig.arriving(model, faults, { ...job.arrival, controls: { ...job.arrival.controls, ...usual, ...controls } });
}

/** Is anything that the complaint denies noticed in some twentieth of a second, looked at or not? */
function blinks(rig: Rig, symptom: Symptom): boolean {
  let denied = false;
  const look = (copy: Rig): boolean => {
    const now = noticed(copy.world, operatorZone(hobbinBook()));
    denied ||= now.some((code) => symptom.missing.includes(code));
    return denied;
  };
  tryOut(rig, symptom, look, 50);
  return denied;
}

describe.each(TRIED)('%s', (id) => {
  test('the truth is among them, by target and mode', () => {
    const [cause] = theJob(id).causes;
    expect(ofJob(id).filter((s) => s.at === cause.at && s.mode === cause.mode)).not.toEqual([]);
  });

  test('each of them, at each end of its degree, makes the machine do what is complained of', () => {
    for (const suspect of sample(ofJob(id), 40, 7))
      expect([suspect.id, complains(theJob(id), suspect)]).toEqual([suspect.id, true]);
  });

  test('each has a weight, a way to cure it and one to three machines', () => {
    for (const suspect of ofJob(id)) {
      expect(suspect.weight).toBeGreaterThan(0);
      expect(suspect.ends.length).toBeGreaterThanOrEqual(1);
      expect(suspect.ends.length).toBeLessThanOrEqual(3);
      if (suspect.mode !== 'operator') expect(suspect.cures.length).toBeGreaterThan(0);
    }
    expect(new Set(ofJob(id).map((s) => s.id)).size).toBe(ofJob(id).length);
  });

  test('those who are left out would not have brought it about', { timeout: 300_000 }, () => {
    const job = theJob(id);
    const suspected = new Set(ofJob(id).map((s) => s.id));
    const innocent = suspectFamilies(model).filter((f) => !suspected.has(f.id) && f.severities.length === 0);
    for (const family of sample(innocent, INNOCENT, 11)) {
      const rig = machineWith(job, family.faults(0), family.controls ?? {});
      const shown = job.complaint.every((symptom) => shows(rig, symptom));
      expect([family.id, shown]).toEqual([family.id, false]);
    }
  });
});

test('a blink that nobody has time to see rules nobody out: suspects are judged as the proof of a repair is', () => {
  const job = theJob('job-12');
  const [family] = suspectFamilies(model).filter((f) => f.at === 'W:402A' && f.mode === 'short_gnd');
  const rig = machineWith(job, family.faults(0), {});
  // Its fuse goes as soon as the engine begins to turn: a jerk of a twentieth of a second, and then nothing.
  expect(job.complaint.some((symptom) => blinks(rig, symptom))).toBe(true);
  expect(job.complaint.every((symptom) => shows(rig, symptom))).toBe(true);
  expect(ofJob('job-12').map((s) => s.id)).toContain(family.id);
});

test('a machine that will not crank with its dash lit: no lamp, no horn, no wiper is suspected', () => {
  const lamps = hobbinBook().parts.filter((p) => p.kind === 'general' && p.symbol === 'lamp');
  const at = targets(ofJob('job-05'));
  expect(lamps.length).toBeGreaterThan(0);
  for (const lamp of lamps) expect(at).not.toContain(lamp.id);
});

test('and the request line from the key to K1 is, with its pins', () => {
  const at = targets(ofJob('job-05'));
  for (const target of ['W:206B', 'W:206C', 'X:X1.2', 'X:X3.3', 'S3', 'S4', 'K1', 'K2', 'F10', 'M1', 'G1'])
    expect(at).toContain(target);
});

test('a machine that clunks has its request line whole: only what carries the starter current is left', () => {
  const at = targets(ofJob('job-12'));
  expect(at).toContain('M1');
  for (const target of ['W:206B', 'X:X1.2', 'S3', 'K2', 'F10']) expect(at).not.toContain(target);
});

test('a dead machine: the switch that was left off comes first, and the main feed is suspected too', () => {
  const shares = [...sharesOf(ofJob('job-02'))].sort((a, b) => b[1] - a[1]);
  expect(shares[0][0]).toBe('S1');
  for (const target of ['W:101A', 'W:001A', 'G1', 'K3']) expect(targets(ofJob('job-02'))).toContain(target);
});

test("every job's faults are among the book's families by target and mode", () => {
  const known = new Set(suspectFamilies(model).map((f) => `${f.at} ${f.mode}`));
  for (const { at, mode } of JOB_IDS.flatMap((id) => [theJob(id).causes[0]])) expect(known).toContain(`${at} ${mode}`);
});

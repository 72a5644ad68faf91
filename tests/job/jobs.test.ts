/** The twelve jobs: each is as it says, can be done safely, and gives nothing away beforehand. */
import { describe, expect, test } from 'vitest';
import { ourJobs } from '../../src/cli/library.ts';
import { failingInterlocks, type JobSpec, Rig, shows } from '../../src/job/index.ts';
import { readJob } from '../../src/scenario/read-job.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { JOB_IDS, jobJson, jobPath, ownWay, theJob } from './at-work.ts';

const arriving = (job: JobSpec): Rig => Rig.arriving(hobbinModel(), job.faults, job.arrival);
const complains = (rig: Rig, job: JobSpec): boolean => job.complaint.some((symptom) => shows(rig, symptom));

/** Everything that the student reads before the first action. */
const toldBefore = (job: JobSpec): string => [job.title, ...Object.values(job.workOrder)].join(' ');

/** Words of a mode that would give it away: `high_r_lug` is `high` and `lug`, and what people say for it. */
const MODE_WORDS: Record<string, RegExp> = {
  discharged: /discharg|flat battery|low battery/i,
  short_gnd: /\bshort(ed|s)?\b|\bchafed?\b|pinched|\bground(ed)?\b/i,
  unprotected: /unprotect|re-?rout/i,
  corroded: /corro|green|rust/i,
  open: /\bopen (wire|circuit)|\bbroken wire/i,
  pushed_back: /push(ed)? back|\bpin\b|terminal/i,
  misadjusted: /adjust|cam\b/i,
  open_coil: /\bcoil\b/i,
  high_r_contact: /resistan|contact/i,
  high_r_lug: /resistan|\blug\b|strap/i,
  operator: /switched off|left off|turned off|disconnect/i,
};

/** The names by which a target could be recognised: its id, its part or wire, its wire number, its plug. */
function namesOf(target: string): string[] {
  const id = target.replace(/^[WX]:/, '');
  const number = /^(\d+)[A-Z]*$/.exec(id)?.[1];
  return [id, ...(target.startsWith('X:') ? [id.split('.')[0]] : []), ...(number === undefined ? [] : [number])];
}

test('the twelve are all there', () => {
  expect(ourJobs()).toEqual(JOB_IDS.map((id) => `${id}.json`));
});

describe.each(JOB_IDS)('%s', (id) => {
  test('nothing is wrong with it: the complaint is there, the way is safe and cures it', () => {
    expect(readJob(hobbinModel(), jobPath(id), jobJson(id), true)).toMatchObject({ ok: true, job: { id } });
  });

  test('its own way has no lapse and ends without the complaint', () => {
    const attempt = ownWay(id);
    expect(attempt.records.flatMap((r) => r.lapses)).toEqual([]);
    expect(attempt.phase).toBe('ended');
    expect(complains(attempt.rig, theJob(id))).toBe(false);
    expect(failingInterlocks(attempt.rig).map((i) => i.id)).toEqual([]);
    const proofs = attempt.records.filter((r) => r.entry.action.do === 'verify');
    expect(proofs.at(-1)?.seen.codes).toEqual(expect.arrayContaining(['complaint-gone', 'interlocks-hold']));
  });

  test('the declared repair alone cures it', () => {
    const job = theJob(id);
    const rig = arriving(job);
    expect(complains(rig, job)).toBe(true);
    for (const fault of job.faults) rig.run([{ cure: fault.cures[0], target: fault.at }]);
    // A fuse found blown stays blown until a new one is in; what the operator left off is turned on.
    for (const region of Object.keys(job.arrival.regions ?? {})) rig.run([{ cure: 'fuse', target: region }]);
    for (const control of Object.keys(job.arrival.controls ?? {})) {
      const usual = hobbinModel().book.controls.find((c) => c.id === control)?.initial ?? '';
      rig.run([{ control, value: usual }]);
    }
    expect(complains(rig, job)).toBe(false);
    expect(failingInterlocks(rig).map((i) => i.id)).toEqual([]);
  });

  test('each way to cure it cures it', () => {
    const job = theJob(id);
    for (const fault of job.faults) {
      for (const verb of fault.cures) {
        const rig = arriving(job);
        rig.run([{ cure: verb, target: fault.at }]);
        expect(rig.faults).toEqual(job.faults.filter((f) => f !== fault));
      }
    }
  });

  test('the usual wrong swap does not cure it', () => {
    const job = theJob(id);
    expect(job.causes.map((c) => c.at)).not.toContain(job.wrongSwap);
    expect(hobbinModel().book.parts.find((p) => p.id === job.wrongSwap)?.replaceable).toBe(true);
    const rig = arriving(job);
    rig.run([{ cure: 'replace', target: job.wrongSwap }]);
    expect(complains(rig, job)).toBe(true);
  });

  test('nothing that is read beforehand names the fault', () => {
    const job = theJob(id);
    const told = toldBefore(job);
    for (const { at, mode } of [...job.causes, ...job.faults]) {
      for (const name of namesOf(at)) expect(told).not.toMatch(new RegExp(`\\b${name.replace('.', '\\.')}\\b`));
      const words = MODE_WORDS[mode];
      if (words !== undefined) expect(told).not.toMatch(words);
    }
  });

  test('its file and its ids do not name the fault', () => {
    const job = theJob(id);
    expect(job.id).toMatch(/^job-\d\d$/);
    expect(job.asks.map((a) => a.id)).toEqual(['when', 'before', 'tried']);
  });
});

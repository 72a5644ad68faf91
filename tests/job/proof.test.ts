/** The proof after a repair: a machine that has fallen silent is not mended. */
import { expect, test } from 'vitest';
import { lacking } from '../../src/job/index.ts';
import { JOB_IDS, ownWay, theJob, work, workedAt } from './at-work.ts';

const SAFE = 'with chocks; with helperClear';

test('the complaint that is still there is said to be there', () => {
  const codes = work(workedAt('job-08', SAFE), 'verify').seen.codes;
  expect(codes).toContain('complaint-stays');
  expect(codes).not.toContain('complaint-gone');
});

test('with the run relay out the complaint as told is gone, and the machine is not mended', () => {
  const attempt = workedAt('job-08', `${SAFE}; walk CFUSE; open AC1; pull K3; walk CDASH; with helperClear`);
  const codes = work(attempt, 'verify').seen.codes;
  expect(codes).toContain('complaint-other');
  expect(codes).toContain('lacks:turns');
  expect(codes).not.toContain('complaint-gone');
});

test('slow cranking is not cured by no cranking', () => {
  const attempt = workedAt('job-11', `${SAFE}; walk BATT; operate iso 0; walk CDASH; with helperClear`);
  expect(work(attempt, 'verify').seen.codes).toContain('complaint-other');
});

test.each(JOB_IDS)('%s: after its own way the machine does all that a sound one does', (id) => {
  const { rig } = ownWay(id);
  for (const symptom of theJob(id).complaint) expect(lacking(rig, symptom)).toEqual([]);
});

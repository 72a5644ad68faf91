/** Every sign that a job has can be had on arrival, and is gone with what it is a sign of. */
import { describe, expect, test } from 'vitest';
import { JOB_IDS, theJob, work, workedAt } from './at-work.ts';

const cases = JOB_IDS.flatMap((id) => theJob(id).signs.map((sign, i) => ({ id, sign, i })));

describe.each(cases)('$id: $sign.text', ({ id, sign, i }) => {
  const { by, at, zone, under, parted } = sign;

  test(`to be had by ${by} at ${at}`, () => {
    const attempt = workedAt(id);
    if (attempt.bench.zone !== zone) work(attempt, `walk ${zone}`);
    if (under !== undefined) work(attempt, `open ${under}`);
    if (parted !== undefined) work(attempt, parted.startsWith('X') ? `unplug ${parted}` : `pull ${parted}`);
    expect(work(attempt, `${by} ${at}`).seen.codes).toContain(`sign:${i}`);
  });
});

test('a switch that was left off is seen to stand at off until somebody turns it on', () => {
  const attempt = workedAt('job-02', 'walk BATT');
  const found = work(attempt, 'look BATT');
  expect(found.seen.codes).toEqual(['sign:0']);
  expect(found.signOf).toBe('S1');
  expect(work(attempt, 'operate iso 1; look BATT').seen.codes).toEqual([]);
});

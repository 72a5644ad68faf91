/** The page's machine is kept by the statechart, a replay's by plain arrays: the same attempt gives the same log in both. */
import { describe, expect, test } from 'vitest';
import { jobOf } from '../../src/cli/library.ts';
import { Attempt, isRefusal, replay } from '../../src/job/index.ts';
import { LiveMachine } from '../../src/machine/index.ts';

describe.each(['job-01', 'job-03', 'job-04', 'job-11'])('%s', (id) => {
  test('its sound way, worked live, replays without a difference', () => {
    const { model, job } = jobOf(id);
    const attempt = new Attempt(model, job);
    attempt.rig.goLive();
    expect(attempt.rig.world).toBeInstanceOf(LiveMachine);
    for (const action of job.path) expect(isRefusal(attempt.act(action))).toBe(false);
    const replayed = replay(model, job, attempt.log);
    expect(replayed.differences).toEqual([]);
    expect(replayed.attempt.log).toEqual(attempt.log);
  });
});

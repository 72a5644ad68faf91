/**
 * ngspice solves the machine's own netlist, and every point must have the same volts: for every job, every position of
 * key, lever, seat and park brake, healthy and faulty, and for every machine along the jobs' own ways, with leads, lifted
 * ends and parted connectors. Relays, timers and speed are ours in both; what this proves is the network's solution.
 */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isRefusal, type JobSpec, Rig } from '../../src/job/index.ts';
import { attemptAt, theJob } from '../job/at-work.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { combinations, sample } from '../support/list.ts';
import { bring, LET_GO, Outside, type Stand } from '../support/outside.ts';

const RELEASE = process.env.OHMYARD_RELEASE !== undefined;
/** In a plain test run, of each job. A network takes ngspice about 20 ms. */
const FAULTY_STATES = 12;
const WAY_STATES = 6;
/** Fixed, so that every run takes the same. */
const CHOICE = 45;

const model = hobbinModel();
const positionsOf = (id: string): string[] => model.book.controls.find((c) => c.id === id)?.values ?? [];
const STANDS: Stand[] = combinations(
  [...positionsOf('key'), LET_GO],
  positionsOf('lever'),
  positionsOf('seat'),
  positionsOf('pbrake'),
).map(([key, lever, seat, pbrake]) => ({ lever, seat, pbrake, key }));

const words = (stand: Stand): string =>
  Object.entries(stand)
    .map(([control, value]) => `${control} ${value}`)
    .join(', ');

const jobs = readdirSync('scenarios/jobs')
  .filter((file) => file.endsWith('.json'))
  .sort()
  .map((file) => theJob(file.replace('.json', '')));

const outside = new Outside();
const tell = (): void => {
  if (RELEASE) console.info(outside.summary());
};
const few = <T>(list: T[], count: number): T[] => (RELEASE ? list : sample(list, count, CHOICE));
const TIMEOUT_MS = RELEASE ? 900_000 : 120_000;

it('every position is tried: 4 of the key and the engine started, 3 of the lever, seat and brake both ways', () => {
  expect(STANDS.length).toBe(5 * 3 * 2 * 2);
  expect(jobs.length).toBeGreaterThanOrEqual(12);
});

describe('node volts as in ngspice, within 10 µV and a millionth: healthy', () => {
  const judgeAll = async (title: string, arrival: JobSpec['arrival'], stands: Stand[]): Promise<void> => {
    for (const stand of stands) {
      const { world } = Rig.arriving(model, [], arrival);
      await outside.judge(bring(world, stand), `${title}, ${words(stand)}`);
    }
    tell();
  };

  it('as the book has it', () => judgeAll('healthy', {}, STANDS), TIMEOUT_MS);

  const arrivals = jobs.filter((job) => Object.keys(job.arrival).length > 0);
  it.each(arrivals)(
    'without its faults as it arrives for $id, $title',
    ({ id, arrival }) => judgeAll(`healthy as for ${id}`, arrival, few(STANDS, FAULTY_STATES)),
    TIMEOUT_MS,
  );
});

describe('node volts as in ngspice: each job with its faults', () => {
  it.each(jobs)(
    '$id, $title',
    async (job) => {
      for (const stand of few(STANDS, FAULTY_STATES)) {
        const { world } = Rig.arriving(model, job.faults, job.arrival);
        await outside.judge(bring(world, stand), `${job.id}, ${words(stand)}`);
      }
      tell();
    },
    TIMEOUT_MS,
  );
});

describe("node volts as in ngspice: after each action of each job's own way", () => {
  it.each(jobs)(
    '$id, $title',
    async (job) => {
      const attempt = attemptAt(job.id);
      const chosen = new Set(few([...job.path.keys()], WAY_STATES));
      for (const [i, action] of job.path.entries()) {
        const done = attempt.act(action);
        expect(isRefusal(done), `${job.id}, action ${i}`).toBe(false);
        if (chosen.has(i)) await outside.judge(attempt.rig.world, `${job.id}, after action ${i}, ${action.do}`);
      }
      tell();
    },
    TIMEOUT_MS,
  );
});

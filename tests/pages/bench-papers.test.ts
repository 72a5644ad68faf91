/** What the screens say beside the drawing: results on the board, seals, what passed and what still is, where the meter lies. */
import { beforeAll, describe, expect, test } from 'vitest';
import { Attempt } from '../../src/job/index.ts';
import { neededToCrank } from '../../src/pages/here/verify-line.tsx';
import { bestSpot, covers, heldIn } from '../../src/pages/meter/placement.ts';
import { jobRecord } from '../../src/pages/state/job-record.ts';
import { Session } from '../../src/pages/state/session.ts';
import { localName } from '../../src/pages/words/names.ts';
import { recordText, resultText } from '../../src/pages/words/results.ts';
import { sealedAt, sealText } from '../../src/pages/words/sealed.ts';
import { seenLines } from '../../src/pages/words/seen.ts';
import { startWords } from '../../src/pages/words/words.ts';
import type { StoredAttempt } from '../../src/storage/attempts.ts';
import { attemptAt, theJob, work, workedAt } from '../job/at-work.ts';
import { hobbinModel } from '../support/hobbin.ts';

beforeAll(startWords);

const stored = (id: string, change: Partial<StoredAttempt> = {}): StoredAttempt => ({
  id,
  jobId: 'job-01',
  header: attemptAt('job-01').log.header,
  takenAt: `2025-11-0${id}T08:00:00.000Z`,
  tenths: 120,
  ended: false,
  practice: false,
  ...change,
});

const sessionAt = (attempt: Attempt): Session => new Session(attempt.model, attempt.job, stored('1'), null, attempt);

describe('the board', () => {
  test('counts the attempts that count and shows the last result', () => {
    const list = [
      stored('1', { ended: true, result: { result: 'fail', points: 40 } }),
      stored('3', { ended: true, result: { result: 'pass', points: 84.4 }, closedAt: '2025-11-04T12:00:00.000Z' }),
      stored('4', { practice: true }),
      stored('5', { jobId: 'job-02' }),
    ];
    const record = jobRecord(list, 'job-01');
    expect(record).toMatchObject({ count: 2, latest: { id: '3' }, closed: { id: '3' } });
    if (record?.closed?.result === undefined) throw new Error('no result');
    expect(resultText(record.closed.result)).toBe('Pass, 84.4 points');
    expect(recordText(record)).toBe('Nov 4, 2025 · 2 attempts');
    expect(jobRecord(list, 'job-03')).toBeNull();
  });

  test('keeps the result before an attempt that is under way, and says where one is still to come', () => {
    const before = stored('1', { ended: true, result: { result: 'not-yet', points: 61 } });
    const record = jobRecord([before, stored('2')], 'job-01');
    if (record === null) throw new Error('no record');
    expect(record.latest.ended).toBe(false);
    expect(recordText(record)).toBe('Not yet, 61 points · Nov 1, 2025 · 2 attempts');
    const open = jobRecord([stored('1', { ended: true })], 'job-01');
    if (open === null) throw new Error('no record');
    expect(recordText(open)).toMatch(/not worked out yet/);
  });
});

describe('sealed plugs', () => {
  test('say which side no probe gets at and what to do, until they are parted', () => {
    const attempt = workedAt('job-05', 'walk USEAT; with seatStay; open AC3');
    const session = sessionAt(attempt);
    expect(sealedAt(session, 'X1').sealed).toHaveLength(12);
    expect(sealText(session, 'X1')).toBe(
      'Cab bulkhead connector (X1) is sealed on the frame harness side: no probe gets in. Unplug it, or use another point of the same wire.',
    );
    expect(sealedAt(session, 'X9').sealed).toEqual([]);
    work(attempt, 'unplug X1');
    expect(sealedAt(session, 'X1').sealed).toEqual([]);
  });
});

describe('what was seen', () => {
  test('a lamp that went out when the engine ran is not said to be lit', () => {
    const attempt = workedAt('job-02', 'walk BATT; operate iso 1; walk CDASH; with chocks; with helperClear');
    const started = work(attempt, 'operate key start 3000');
    const [meanwhile, now] = seenLines(attempt.model, attempt.job, started).slice(-2);
    expect(started.seen.codes).toContain('charge-lamp');
    expect(meanwhile).toMatch(/^Meanwhile: .*charge lamp is lit/);
    expect(now).toMatch(/^Now: .*engine runs/);
    expect(now).not.toMatch(/charge lamp/);
    expect(seenLines(attempt.model, attempt.job, work(attempt, 'operate key off'))).toContain('The engine stops.');
  });
});

test('a fuse is fed at the terminal that is said to be its feed side', () => {
  const attempt = new Attempt(hobbinModel(), { ...theJob('job-01'), faults: [], arrival: {} });
  work(attempt, 'start; operate lights head; operate wlf 1; operate key run');
  const { world } = attempt.rig;
  const fuses = attempt.model.book.parts.filter((p) => p.kind === 'fuse');
  const live = fuses.filter((p) => world.voltsBetween(`${p.id}.a`, attempt.model.book.reference) > 10);
  expect(live.length).toBeGreaterThan(20);
  for (const { id } of live) {
    attempt.rig.run([{ hands: { ...attempt.bench, pulled: [id] } }]);
    const volts = (side: string): number => world.voltsBetween(`${id}.${side}`, attempt.model.book.reference);
    const [fed, other] = volts('a') > volts('b') ? ['a', 'b'] : ['b', 'a'];
    expect([id, localName(attempt.model, `${id}.${fed}`)]).toEqual([id, expect.stringContaining('feed side')]);
    expect(localName(attempt.model, `${id}.${other}`)).toContain('load side');
  }
});

test('the proof names the precautions of every check on the key to start in the cab', () => {
  expect(neededToCrank(sessionAt(workedAt('job-01')))).toEqual(['chocks', 'helperClear', 'leverNeutral', 'parkBrake']);
});

describe('the instrument', () => {
  const room = { x: 0, y: 0, w: 1000, h: 600 };
  const size = { w: 300, h: 320 };
  const corner = { x: 1000, y: 0 };

  test('lies in its corner where that covers nothing', () => {
    expect(bestSpot(room, size, [{ x: 100, y: 100, weight: 1 }], [], corner)).toEqual({ x: 700, y: 0 });
  });

  test('lies beside a drawing rather than on it, and on it rather than over a point', () => {
    const drawing = { x: 0, y: 0, w: 1000, h: 200 };
    expect(bestSpot(room, size, [], [drawing], corner).y).toBeGreaterThanOrEqual(200);
    const below = Array.from({ length: 12 }, (_, i) => ({
      x: (i % 6) * 180,
      y: 380 + Math.floor(i / 6) * 90,
      weight: 1,
    }));
    const at = bestSpot(room, size, below, [drawing], corner);
    expect(below.filter((spot) => covers({ ...at, ...size }, spot))).toEqual([]);
  });

  test('goes where it covers least, and off the chosen point whatever else that covers', () => {
    const crowd = Array.from({ length: 40 }, (_, i) => ({
      x: 20 + (i % 8) * 60,
      y: 40 + Math.floor(i / 8) * 120,
      weight: 1,
    }));
    const chosen = { x: 850, y: 100, weight: 10_000 };
    const at = bestSpot({ ...room, h: 330 }, size, [...crowd, chosen], [], corner);
    expect(covers({ ...at, ...size }, chosen)).toBe(false);
  });

  test('is held in its room, by the head where the room is too low', () => {
    expect(heldIn(room, size, { x: 900, y: -40 })).toEqual({ x: 700, y: 0 });
    expect(heldIn({ ...room, h: 200 }, size, { x: 10, y: 150 })).toEqual({ x: 10, y: 0 });
  });
});

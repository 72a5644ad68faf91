/** Precautions are checked at the moment at which they matter, and lapse when the book says so. */
import { describe, expect, test } from 'vitest';
import { isSetByHand } from '../../src/job/index.ts';
import { hobbinBook } from '../support/hobbin.ts';
import { refusalOf, work, workedAt } from './at-work.ts';

const checksOf = (record: { lapses: { check: string }[] }): string[] => record.lapses.map((l) => l.check);

describe('the key to start', () => {
  test('without chocks is critical', () => {
    const { lapses } = work(workedAt('job-05', 'with helperClear'), 'operate key start');
    expect(lapses).toEqual([{ check: 'crank-chocks', missing: ['chocks'], critical: true }]);
  });

  test('with somebody in the way is critical', () => {
    const { lapses } = work(workedAt('job-05', 'with chocks'), 'operate key start');
    expect(lapses).toEqual([{ check: 'crank-clear', missing: ['helperClear'], critical: true }]);
  });

  test('with the lever in forward is critical', () => {
    const attempt = workedAt('job-05', 'with chocks; with helperClear; operate lever F');
    expect(checksOf(work(attempt, 'operate key start'))).toEqual(['crank-neutral']);
  });

  test('with the brake off is critical', () => {
    const attempt = workedAt('job-05', 'with chocks; with helperClear; operate pbrake 0');
    expect(checksOf(work(attempt, 'operate key start'))).toEqual(['crank-brake']);
  });

  test('under the machine is critical, whatever else stands', () => {
    const attempt = workedAt('job-05', 'with chocks; walk TRAY; helper call; with helperClear');
    expect(checksOf(work(attempt, 'operate key start'))).toEqual(['crank-under']);
  });

  test('with everything in place is no lapse', () => {
    expect(work(workedAt('job-05', 'with chocks; with helperClear'), 'operate key start').lapses).toEqual([]);
  });

  test('with wire 208 off needs none of it', () => {
    const off = 'walk BATT; operate iso 0; walk ENGL; with clothing; open AC5; lift 208A@to; walk BATT; operate iso 1';
    const attempt = workedAt('job-05', `${off}; walk TRAY; helper call`);
    expect(work(attempt, 'operate key start').lapses).toEqual([]);
  });

  test('for the proof asks for the same', () => {
    expect(checksOf(work(workedAt('job-05'), 'verify'))).toEqual(['crank-chocks', 'crank-clear']);
  });

  test('only to run asks for nothing', () => {
    expect(work(workedAt('job-05'), 'operate key run').lapses).toEqual([]);
  });
});

describe('studs', () => {
  const atBattery = 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4';

  test('live are critical', () => {
    const { lapses } = work(workedAt('job-11', atBattery), 'repair clean W:002A');
    expect(lapses).toEqual([{ check: 'stud-dead', missing: ['disconnectOff'], critical: true }]);
  });

  test('dead are no lapse', () => {
    expect(work(workedAt('job-11', `${atBattery}; operate iso 0`), 'repair clean W:002A').lapses).toEqual([]);
  });
});

describe('what sits in a socket asks for the key off, what is bolted for S1 off', () => {
  const fuseBox = 'walk CFUSE; open AC1';
  const keyOn = (text: string) => checksOf(work(workedAt('job-05', `operate key run; ${fuseBox}`), text));

  test.each(['pull K3', 'pull K2', 'pull F10', 'exchange K2 K8'])('%s with the key on', (text) => {
    expect(keyOn(text)).toEqual(['pull-dead']);
  });

  test('a relay put back with the key on', () => {
    const attempt = workedAt('job-05', `${fuseBox}; pull K3`);
    work(attempt, 'walk CDASH; operate key run; walk CFUSE');
    expect(checksOf(work(attempt, 'refit K3'))).toEqual(['pull-dead']);
  });

  test('none of it is critical: nobody is hurt by a relay out of its socket', () => {
    const attempt = workedAt('job-05', `operate key run; ${fuseBox}`);
    expect(work(attempt, 'pull K3').lapses.map((l) => l.critical)).toEqual([false]);
  });

  test('the heater relay has studs that are live with the key off', () => {
    const atHeater = 'walk ENGR; with heaterCool; open AC12';
    expect(checksOf(work(workedAt('job-05', atHeater), 'pull K10'))).toEqual(['stud-dead']);
  });

  test('a plug parted or joined with the key on', () => {
    const attempt = workedAt('job-05', `operate key run; ${fuseBox}`);
    expect(checksOf(work(attempt, 'unplug X6'))).toEqual(['unplug-dead']);
    expect(checksOf(work(attempt, 'plug X6'))).toEqual(['unplug-dead']);
  });

  test('a plug parted with the key off is no lapse', () => {
    expect(work(workedAt('job-05', fuseBox), 'unplug X6').lapses).toEqual([]);
  });

  test('the feed-through studs under the seat are no plug', () => {
    const underSeat = 'walk USEAT; with seatStay; open AC3';
    expect(checksOf(work(workedAt('job-05', underSeat), 'unplug X25'))).toEqual(['stud-dead']);
  });
});

describe('the negative cable is first off and last on', () => {
  const dead = 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4; operate iso 0';

  test('the plus cable off while the negative one is on', () => {
    expect(checksOf(work(workedAt('job-05', dead), 'lift 101A@from'))).toEqual(['stud-negative']);
  });

  test('in the right order there is no lapse, on the way off and on the way back', () => {
    const attempt = workedAt('job-05', dead);
    work(attempt, 'lift 001A@from; lift 101A@from; land 101A@from; land 001A@from');
    expect(attempt.records.flatMap((r) => r.lapses)).toEqual([]);
  });

  test('the plus cable back on when the negative one is on already', () => {
    const attempt = workedAt('job-05', `${dead}; lift 001A@from; lift 101A@from; land 001A@from`);
    expect(checksOf(work(attempt, 'land 101A@from'))).toEqual(['stud-negative']);
  });

  test('at the disconnect switch too: its battery side is live with S1 off', () => {
    expect(checksOf(work(workedAt('job-05', dead), 'lift 101A@to'))).toEqual(['stud-negative']);
  });

  test('other cables do not ask for it', () => {
    expect(work(workedAt('job-05', dead), 'lift 102A@from').lapses).toEqual([]);
  });
});

describe('covers', () => {
  test('the belly pan without its precautions is critical and names each that is missing', () => {
    const { lapses } = work(workedAt('job-05', 'walk TRAY'), 'open AC6');
    expect(lapses).toEqual([{ check: 'open:AC6', missing: ['keyOut', 'coolDown', 'chocks'], critical: true }]);
  });

  test('the belly pan with all of them is no lapse', () => {
    const attempt = workedAt('job-05', 'walk TRAY; with chocks; with keyOut; with coolDown');
    expect(work(attempt, 'open AC6').lapses).toEqual([]);
  });

  test('the seat without its stay is a lapse that is not critical', () => {
    const { lapses } = work(workedAt('job-05', 'walk USEAT'), 'open AC3');
    expect(lapses).toEqual([{ check: 'open:AC3', missing: ['seatStay'], critical: false }]);
  });
});

test('ohms with the battery on the machine is a lapse, a pulled relay with the key on too', () => {
  const attempt = workedAt('job-05', 'walk CFUSE; open AC1; dial ohms; red K2.30; black K2.87');
  expect(checksOf(work(attempt, 'read'))).toEqual(['ohms-dead']);
  expect(checksOf(work(attempt, 'operate key run; pull K2'))).toEqual(['pull-dead']);
});

describe('ohms on a circuit with supply', () => {
  const K2_COIL = 'walk CFUSE; open AC1; dial ohms; red K2.86; black K2.85';

  test('also where a control is moved with the leads on', () => {
    const attempt = workedAt('job-05', `${K2_COIL}; helper call`);
    expect(checksOf(work(attempt, 'operate key acc'))).toEqual(['ohms-dead']);
  });

  test('also continuity', () => {
    expect(checksOf(work(workedAt('job-05', `${K2_COIL}; dial continuity`), 'read'))).toEqual(['ohms-dead']);
  });

  test('also where the battery comes back only with that move', () => {
    const atBattery = 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4; operate iso 0';
    const attempt = workedAt('job-05', `${atBattery}; dial ohms; red FM2.a; black FM2.b`);
    expect(work(attempt, 'read').lapses).toEqual([]);
    expect(checksOf(work(attempt, 'operate iso 1'))).toEqual(['ohms-dead']);
    expect(work(attempt, 'operate iso 0').lapses).toEqual([]);
  });

  test('not with volts, and not with a lead in the current jack: no test current flows', () => {
    expect(work(workedAt('job-05', `${K2_COIL}; dial volts-dc`), 'read').lapses).toEqual([]);
    expect(work(workedAt('job-05', `${K2_COIL}; jack amps`), 'read').lapses).toEqual([]);
  });
});

test('a fuse pulled with the key off is no lapse', () => {
  expect(work(workedAt('job-03', 'walk CFUSE; open AC1'), 'pull F10').lapses).toEqual([]);
});

describe('the disconnect switch', () => {
  const missing = (before: string): string[] =>
    work(workedAt('job-05', before), 'operate iso 0').lapses.flatMap((lapse) => lapse.missing);

  test('turned off with the key at run: A1 was still writing', () => {
    expect(missing('operate key run; walk BATT')).toEqual(['wait10s']);
  });

  test('turned off once the key has been off for as long as the walk takes is no lapse', () => {
    expect(missing('operate key run; operate key off; walk BATT')).toEqual([]);
  });
});

describe('a precaution that the machine belies is not taken', () => {
  test.each([
    ['the key out', 'keyOut', 'operate key run', 'keyOff'],
    ['the switch locked off', 'tagLock', '', 'disconnectOff'],
    ['the heater cool', 'heaterCool', 'operate key start', 'engineStopped'],
  ])('%s', (_what, id, before, needed) => {
    const sound = workedAt('job-02', `walk BATT; operate iso 1; walk CDASH; ${before}`);
    expect(refusalOf(sound, `with ${id}`)).toBe(`untrue ${needed}`);
  });

  test.each(['helperAtKey', 'helperInSeat'])('%s without a helper', (id) => {
    const attempt = workedAt('job-05', 'walk CFUSE');
    expect(refusalOf(attempt, `with ${id}`)).toBe(`nobody-there ${id}`);
    work(attempt, 'helper call');
    expect(refusalOf(attempt, `with ${id}`)).toBe('');
    work(attempt, `with ${id}; helper off`);
    expect(attempt.bench.precautions).not.toContain(id);
  });

  test.each(['run', 'start'])('what was true with the key off ends with the key at %s', (position) => {
    const attempt = workedAt('job-05', 'with chocks; with helperClear; with keyOut');
    expect(attempt.bench.precautions).toContain('keyOut');
    work(attempt, `operate key ${position}`);
    expect(attempt.bench.precautions).toEqual(expect.not.arrayContaining(['keyOut']));
    expect(attempt.bench.precautions).toContain('chocks');
  });

  test('a refused one costs nothing', () => {
    const attempt = workedAt('job-05', 'operate key run');
    const { tenths } = attempt;
    attempt.act({ do: 'precaution', id: 'keyOut', on: true });
    expect([attempt.tenths, attempt.bench.precautions]).toEqual([tenths, []]);
  });
});

describe('precautions lapse', () => {
  test('everybody clear, when the helper moves or a cover is opened', () => {
    const attempt = workedAt('job-05', 'with helperClear; helper call');
    expect(attempt.bench.precautions).not.toContain('helperClear');
    work(attempt, 'with helperClear; walk CFUSE; open AC1');
    expect(attempt.bench.precautions).not.toContain('helperClear');
  });

  test('leads clipped, when the student walks', () => {
    const attempt = workedAt('job-05', 'with leadsClipped; walk BATT');
    expect(attempt.bench.precautions).not.toContain('leadsClipped');
  });

  test('the key out, when it goes back in', () => {
    const attempt = workedAt('job-05', 'with chocks; with helperClear; with keyOut; operate key start');
    expect(attempt.bench.precautions).not.toContain('keyOut');
  });

  test('chocks and eye protection, never', () => {
    const attempt = workedAt('job-05', 'with chocks; with eyeProtection; helper call; walk CFUSE; open AC1');
    expect(attempt.bench.precautions).toEqual(['chocks', 'eyeProtection']);
  });

  test('when the student takes them back', () => {
    expect(workedAt('job-05', 'with chocks; without chocks').bench.precautions).toEqual([]);
  });
});

test('every precaution that a check or a cover asks for stands in the book, and can be had', () => {
  const book = hobbinBook();
  const known = new Set(book.precautions.map((p) => p.id));
  for (const check of book.checks) for (const id of check.needs.flat()) expect(known).toContain(id);
  for (const step of book.access) for (const id of [...step.toOpen, ...step.toWork]) expect(known).toContain(id);
  expect(book.precautions.filter(isSetByHand).map((p) => p.id)).toContain('chocks');
});

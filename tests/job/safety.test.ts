/** Precautions are checked at the moment at which they matter, and lapse when the book says so. */
import { describe, expect, test } from 'vitest';
import { isSetByHand } from '../../src/job/index.ts';
import { hobbinBook } from '../support/hobbin.ts';
import { work, workedAt } from './at-work.ts';

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

test('a fuse pulled with the key off is no lapse', () => {
  expect(work(workedAt('job-03', 'walk CFUSE; open AC1'), 'pull F10').lapses).toEqual([]);
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

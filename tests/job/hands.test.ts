/** What hands, helper and controls do to the machine, as readings and states of the real attempt show it. */
import { expect, test } from 'vitest';
import { type Attempt, shows } from '../../src/job/index.ts';
import { hobbinBook } from '../support/hobbin.ts';
import { theJob, work, workedAt } from './at-work.ts';

const SAFE = 'with chocks; with helperClear';
const AT_ENGINE = 'walk ENGL; with clothing; open AC5';
const seatOf = (attempt: Attempt): string => attempt.rig.world.controlOf(hobbinBook().seat.control);
const { occupied, empty } = hobbinBook().seat;

test('leads stay where they are while the student walks and operates', () => {
  const attempt = workedAt('job-05', 'walk USEAT; with seatStay; open AC3; dial volts-dc; red X1.2.a; black GND3.L');
  const leads = { red: 'X1.2.a', black: 'GND3.L' };
  work(attempt, `helper call; walk CDASH; ${SAFE}`);
  expect(attempt.bench.leads).toEqual(leads);
  expect(Number(work(attempt, 'operate key run').seen.display?.text)).toBeLessThan(0.1);
  expect(Number(work(attempt, 'operate key start').seen.display?.text)).toBeGreaterThan(11);
  expect(attempt.bench.leads).toEqual(leads);
});

test('with the seat tilted away and nobody on it the request line stays dead', () => {
  const attempt = workedAt('job-05', 'walk USEAT; with seatStay; open AC3; dial volts-dc; red X1.2.a; black GND3.L');
  expect(Number(work(attempt, `${SAFE}; operate key start`).seen.display?.text)).toBeLessThan(0.1);
});

test('taking another instrument takes the leads off', () => {
  const attempt = workedAt('job-05', 'walk USEAT; with seatStay; open AC3; red X1.2.a; black GND3.L; take lamp');
  expect(attempt.bench.leads).toEqual({ red: null, black: null });
});

test('a momentary position springs back, after the time that it is held', () => {
  const attempt = workedAt('job-05', SAFE);
  const before = attempt.timeMs;
  work(attempt, 'operate key start');
  expect(attempt.rig.world.controlOf('key')).toBe('run');
  const usual = attempt.timeMs - before;
  work(attempt, 'operate key off');
  const again = attempt.timeMs;
  work(attempt, 'operate key start 5000');
  expect(attempt.timeMs - again - usual).toBe(3000);
});

test('the helper stays ten minutes from the call, then the key and the seat are left', () => {
  const attempt = workedAt('job-05', `${AT_ENGINE}; helper call`);
  const called = attempt.bench.helperUntilMs ?? 0;
  expect(seatOf(attempt)).toBe(occupied);
  work(attempt, 'dial volts-dc; red K1.86; black GND2.L');
  while (attempt.timeMs + 60_000 < called) work(attempt, 'read');
  expect(seatOf(attempt)).toBe(occupied);
  work(attempt, 'read');
  expect(attempt.bench.helperUntilMs).toBeNull();
  expect(seatOf(attempt)).toBe(empty);
  expect(attempt.timeMs).toBeGreaterThanOrEqual(called);
  const refusal = attempt.refusal({ do: 'operate', control: 'key', value: 'run' });
  expect(refusal).toEqual({ code: 'needs-helper', what: 'CDASH' });
});

test('out of the cab the seat is empty without a helper', () => {
  const attempt = workedAt('job-09');
  expect(seatOf(attempt)).toBe(occupied);
  work(attempt, 'walk BATT');
  expect(seatOf(attempt)).toBe(empty);
  work(attempt, 'helper call');
  expect(seatOf(attempt)).toBe(occupied);
  work(attempt, 'helper off');
  expect(seatOf(attempt)).toBe(empty);
  work(attempt, 'walk CDASH');
  expect(seatOf(attempt)).toBe(occupied);
});

test('a helper whose time runs out while a cover comes off leaves an empty seat', () => {
  const attempt = workedAt('job-09', 'walk TRAY; with chocks; helper call; with keyOut; with coolDown; open AC6');
  expect(attempt.bench.helperUntilMs).toBeNull();
  expect(seatOf(attempt)).toBe(empty);
});

test('a relay that is pulled is out of the circuit until it is refitted', () => {
  const attempt = workedAt('job-09', `${SAFE}; walk CFUSE; open AC1; pull K2; operate key start`);
  expect(attempt.records.at(-1)?.seen.codes).not.toContain('click:K2');
  const back = work(attempt, 'operate key off; refit K2; with helperClear; operate key start');
  expect(back.seen.codes).toContain('click:K2');
});

test('like relays that change places carry the fault with them, and back', () => {
  const attempt = workedAt('job-10', `${SAFE}; walk CFUSE; open AC1`);
  const [complaint] = theJob('job-10').complaint;
  expect(shows(attempt.rig, complaint)).toBe(true);
  work(attempt, 'exchange K2 K5');
  expect(shows(attempt.rig, complaint)).toBe(false);
  work(attempt, 'exchange K5 K2');
  expect(attempt.bench.exchanged).toEqual([]);
  expect(shows(attempt.rig, complaint)).toBe(true);
});

test('a new fuse without the short mended blows again', () => {
  const attempt = workedAt('job-03', `${SAFE}; walk CFUSE; open AC1`);
  expect(attempt.rig.world.stateOf('F10')).toBe('blown');
  work(attempt, 'repair fuse F10');
  expect(attempt.rig.world.stateOf('F10')).not.toBe('blown');
  work(attempt, 'close AC1; walk CDASH; with helperClear; operate key start');
  expect(attempt.rig.world.stateOf('F10')).toBe('blown');
});

test('the disconnect switch off takes the feed away', () => {
  const attempt = workedAt('job-05', 'walk BATT; operate iso 0; walk CDASH');
  expect(work(attempt, 'operate key run').seen.codes).not.toContain('cluster-on');
});

test('a stored code is read until it is cleared', () => {
  const attempt = workedAt('job-05', 'operate key run');
  const { world } = attempt.rig;
  const code = hobbinBook().parts.flatMap((part) => (part.kind === 'controller' ? part.codes : []))[0].code;
  world.setRegion(code, 'stored');
  expect(work(attempt, 'codes').seen.codes).toContain(`code:${code}`);
  work(attempt, 'clearCodes');
  expect(world.stateOf(code)).toBe('clear');
});

test('a sign shows only where it is, parted, and while its fault is there', () => {
  const attempt = workedAt('job-06', 'walk USEAT; with seatStay; open AC3');
  expect(work(attempt, 'look X1').seen.codes).not.toContain('sign:0');
  const found = work(attempt, 'unplug X1; look X1');
  expect(found.seen.codes).toContain('sign:0');
  expect(found.signOf).toBe('X:X1.2');
  expect(work(attempt, 'repair re-pin X:X1.2; look X1').seen.codes).not.toContain('sign:0');
});

test('an answer is given to a question of the job only', () => {
  const attempt = workedAt('job-06');
  expect(work(attempt, 'ask when').seen.codes).toEqual(['answer:when']);
  expect(work(attempt, 'ask weather').seen.codes).toEqual([]);
});

test('the proof says whether the complaint stays and whether the interlocks hold', () => {
  const attempt = workedAt('job-08', SAFE);
  expect(work(attempt, 'verify').seen.codes).toEqual(expect.arrayContaining(['complaint-stays', 'interlocks-hold']));
});

/** Shop minutes in tenths and prices, by the book's shop table and its parts. */
import { expect, test } from 'vitest';
import { billOf, type Record as Done } from '../../src/job/index.ts';
import { hobbinBook } from '../support/hobbin.ts';
import { work, workedAt } from './at-work.ts';

const costOf = ({ entry }: Done): [tenths: number, price: number] => [entry.tenths, entry.price];

test('walking costs the same both ways, from the table', () => {
  const attempt = workedAt('job-01');
  expect(costOf(work(attempt, 'walk BATT'))).toEqual([10, 0]);
  expect(costOf(work(attempt, 'walk ENGL'))).toEqual([3, 0]);
  expect(costOf(work(attempt, 'walk BATT'))).toEqual([3, 0]);
  expect(costOf(work(attempt, 'walk CDASH'))).toEqual([10, 0]);
});

test('covers cost what their step says', () => {
  const attempt = workedAt('job-01', 'walk TRAY; with chocks; with keyOut; with coolDown');
  expect(costOf(work(attempt, 'open AC6'))).toEqual([90, 0]);
  expect(costOf(work(attempt, 'close AC6'))).toEqual([100, 0]);
});

test('a reading is one minute, one of ohms two, and a lead costs nothing', () => {
  const attempt = workedAt('job-01', 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4');
  expect(costOf(work(attempt, 'dial volts-dc'))).toEqual([0, 0]);
  expect(costOf(work(attempt, 'red G1.+'))).toEqual([0, 0]);
  expect(costOf(work(attempt, 'black G1.-; read'))).toEqual([10, 0]);
  expect(costOf(work(attempt, 'operate iso 0'))).toEqual([10, 0]);
  expect(costOf(work(attempt, 'dial ohms; read'))).toEqual([20, 0]);
});

test('a control costs a tenth while no lead is on', () => {
  expect(costOf(work(workedAt('job-01'), 'operate key run'))).toEqual([1, 0]);
});

test('looking, asking, codes, the helper and the proof', () => {
  const attempt = workedAt('job-01', 'with chocks; with helperClear');
  const one = (text: string) => costOf(work(attempt, text));
  expect(one('look CDASH')).toEqual([10, 0]);
  expect(one('ask when')).toEqual([20, 0]);
  expect(one('codes')).toEqual([20, 0]);
  expect(one('clearCodes')).toEqual([40, 0]);
  expect(one('helper call')).toEqual([30, 0]);
  expect(one('helper off')).toEqual([0, 0]);
  expect(one('with helperClear; verify')).toEqual([60, 0]);
});

test('pulling and refitting share the minute that the book has for both', () => {
  const attempt = workedAt('job-01', 'walk CFUSE; open AC1');
  expect(costOf(work(attempt, 'pull K2'))).toEqual([5, 0]);
  expect(costOf(work(attempt, 'refit K2'))).toEqual([5, 0]);
  expect(costOf(work(attempt, 'exchange K2 K5'))).toEqual([30, 0]);
});

test("a new part costs the part's own minutes and price", () => {
  const attempt = workedAt('job-09', 'walk BATT; operate iso 0; walk ENGL; with clothing; open AC5');
  const part = hobbinBook().parts.find((p) => p.id === 'K1');
  expect(costOf(work(attempt, 'repair replace K1'))).toEqual([(part?.replaceMinutes ?? 0) * 10, part?.price]);
});

test('a repair costs what the table says; charging only the minutes that somebody stands beside it', () => {
  const attempt = workedAt('job-01', 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4');
  expect(costOf(work(attempt, 'operate iso 0; repair charge G1'))).toEqual([100, 0]);
  expect(costOf(work(attempt, 'repair clean W:002A'))).toEqual([80, 2]);
});

test('the sums are the sums of the entries', () => {
  const attempt = workedAt('job-03', 'walk CFUSE; open AC1; look F10; repair fuse F10; close AC1');
  const { entries } = attempt.log;
  expect(attempt.tenths).toBe(entries.reduce((sum, e) => sum + e.tenths, 0));
  expect(attempt.price).toBe(entries.reduce((sum, e) => sum + e.price, 0));
  expect(attempt.timeMs).toBeGreaterThanOrEqual(attempt.tenths * 6000);
});

test('labour is billed in tenths of an hour begun, at 85 an hour, and parts on top', () => {
  const book = hobbinBook();
  expect(billOf(book, 0, 0)).toBe(0);
  expect(billOf(book, 1, 0)).toBe(8.5);
  expect(billOf(book, 60, 0)).toBe(8.5);
  expect(billOf(book, 61, 0)).toBe(17);
  expect(billOf(book, 600, 12)).toBe(97);
});

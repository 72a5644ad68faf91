/** What a helper or a stay holds is held no longer when the helper has left or the seat is down. */
import { expect, test } from 'vitest';
import { lapsedBy } from '../../src/pages/state/lapsed.ts';
import { work, workedAt } from './at-work.ts';

const STANDING = 'helper call; with helperAtKey; with helperInSeat; with chocks';

test('a helper who is sent away takes along what the helper held', () => {
  const attempt = workedAt('job-05', STANDING);
  expect(attempt.bench.precautions).toEqual(expect.arrayContaining(['helperAtKey', 'helperInSeat', 'chocks']));
  work(attempt, 'helper off');
  expect(attempt.bench.precautions).toEqual(['chocks']);
});

test('so does a helper whose time has run out', () => {
  const attempt = workedAt('job-05', STANDING);
  work(attempt, 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4; close AC4; open AC4');
  for (let i = 0; i < 12 && attempt.bench.helperUntilMs !== null; i++) work(attempt, 'close AC4; open AC4');
  expect(attempt.bench.helperUntilMs).toBeNull();
  expect(attempt.bench.precautions).not.toContain('helperAtKey');
  expect(attempt.bench.precautions).not.toContain('helperInSeat');
  expect(attempt.bench.precautions).toContain('chocks');
});

test('the stay of the seat goes when the seat is let down, and with no other cover', () => {
  const attempt = workedAt('job-05', 'walk USEAT; with seatStay; open AC3; walk CFUSE; open AC1; close AC1');
  expect(attempt.bench.precautions).toContain('seatStay');
  work(attempt, 'walk USEAT; close AC3');
  expect(attempt.bench.precautions).not.toContain('seatStay');
});

test('the board tells what lapsed from what was taken away by hand and from what never stood', () => {
  const attempt = workedAt('job-05', `${STANDING}; with columnLocked; without columnLocked; helper off`);
  const lapsed = (id: string): boolean => lapsedBy(attempt.records, id) !== null;
  expect(['helperAtKey', 'helperInSeat', 'columnLocked', 'chocks', 'noFlame'].filter(lapsed)).toEqual([
    'helperAtKey',
    'helperInSeat',
  ]);
  work(attempt, 'helper call; with helperAtKey');
  expect(lapsed('helperAtKey')).toBe(false);
});

/** A battery on the charger: ninety minutes of the machine's time, ten of somebody's, and full at the end (book, repairs). */
import { expect, test } from 'vitest';
import { Rig } from '../../src/job/index.ts';
import type { Fault } from '../../src/parts/index.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { theJob, work, workedAt } from './at-work.ts';

const TO_BATTERY = 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4';
const restOf = (rig: Rig): number => rig.world.voltsBetween('G1.+', 'G1.-');

test('ninety minutes pass, ten are paid for, and a flat battery rests full', () => {
  const attempt = workedAt('job-01', `${TO_BATTERY}; operate iso 0`);
  const [timeMs, tenths] = [attempt.timeMs, attempt.tenths];
  expect(restOf(attempt.rig)).toBeCloseTo(10.3, 2);
  work(attempt, 'repair charge G1');
  expect(attempt.timeMs - timeMs).toBe(90 * 60_000);
  expect(attempt.tenths - tenths).toBe(100);
  expect(restOf(attempt.rig)).toBeCloseTo(12.65, 2);
  expect(attempt.rig.world.quantityOf('G1.usedAh')).toBe(0);
});

test('what was drawn on the way is put back too', () => {
  const attempt = workedAt('job-05', `operate key run; ${TO_BATTERY}`);
  expect(attempt.rig.world.quantityOf('G1.usedAh')).toBeGreaterThan(0);
  work(attempt, 'repair charge G1');
  expect(attempt.rig.world.quantityOf('G1.usedAh')).toBe(0);
});

test('a worn battery rests full after it, and gives way under load as before', () => {
  const cell = { kind: 'battery', element: 'G1.cell', openVolts: 12.05, ohms: 0.04 } as const;
  const worn: Fault = { at: 'G1', mode: 'weak', changes: [cell], cures: ['replace'] };
  const rig = Rig.arriving(hobbinModel(), [worn], theJob('job-05').arrival);
  rig.run([{ cure: 'charge', target: 'G1' }]);
  expect(restOf(rig)).toBeCloseTo(12.65, 2);
  rig.run([{ control: 'key', value: 'run' }, { pass: 1000 }]);
  const amps = Math.abs(rig.world.ampsIn('G1.cell'));
  expect(amps).toBeGreaterThan(1);
  expect((12.65 - restOf(rig)) / amps).toBeCloseTo(0.04, 3);
});

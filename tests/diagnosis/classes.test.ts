/** What a technician calls a reading: cut at the manual's limits and at shares of the battery's voltage. */
import { describe, expect, test } from 'vitest';
import { classesBetween, classOf, limitFor, type Yardstick } from '../../src/diagnosis/index.ts';
import { hobbinBook } from '../support/hobbin.ts';

const volts: Yardstick = { sound: 12, supply: 12.5, limit: 0.25, quantity: 'volts' };
const ohmsOf = (sound: number | null): Yardstick => ({ sound, supply: 12.5, limit: 0.25, quantity: 'ohms' });
const amps: Yardstick = { sound: 4, supply: 12.5, limit: 0.25, quantity: 'amps' };

describe('volts', () => {
  test.each([
    [0, 'none'],
    [0.25, 'none'],
    [0.26, 'trace'],
    [0.08 * 12.5, 'trace'],
    [1.1, 'low'],
    [0.35 * 12.5, 'low'],
    [6.25, 'half'],
    [0.65 * 12.5, 'half'],
    [8.5, 'weak'],
    [0.92 * 12.5, 'weak'],
    [11.6, 'full'],
    [12.6, 'full'],
    [-12.6, '-full'],
    [-0.2, 'none'],
  ])('%d V is %s', (value, name) => {
    expect(classOf(value, volts)).toBe(name);
  });

  test("the manual's limit for two points decides what counts as none", () => {
    expect(classOf(0.3, { ...volts, limit: 0.4 })).toBe('none');
    expect(classOf(0.3, { ...volts, limit: 0.2 })).toBe('trace');
  });

  test('a low battery is judged against the sound machine in the same state', () => {
    expect(classOf(9.4, { ...volts, supply: 10 })).toBe('full');
    expect(classOf(9.4, volts)).toBe('weak');
  });
});

describe('ohms', () => {
  test.each([
    ['overload is open', null, 57, 'open'],
    ['next to nothing is none', 0.4, 0.3, 'none'],
    ['next to nothing where much should be is none', 0.4, 57, 'none'],
    ['near the sound value is in', 60, 57, 'in'],
    ['far over it is high', 90, 57, 'high'],
    ['far under it is less', 20, 57, 'less'],
    ['a strap that others use may be a little under nothing', -0.05, 0.3, 'none'],
    ['negative is of a live circuit', -40, 57, 'live'],
    ['some where none should be', 120, 0.3, 'ohms'],
    ['a trickle where the sound machine is open', 1e6, null, 'leak'],
  ])('%s', (_, value, sound, name) => {
    expect(classOf(value, ohmsOf(sound))).toBe(name);
  });
});

test('between nothing and too much for a range that is kept lies every size of voltage', () => {
  expect(classesBetween([0, null], volts)).toEqual(new Set(['none', 'open', 'trace', 'low', 'half', 'weak', 'full']));
  expect(classesBetween([null, null], volts)).toEqual(new Set(['open']));
});

test('on diode test, volts are judged as the ohms that they stand for at 1 mA', () => {
  const diode: Yardstick = { sound: 0.057, supply: 12.5, limit: 0.25, quantity: 'diode' };
  expect([null, 0.06, 0.09, 0.02, 0.0004].map((v) => classOf(v, diode))).toEqual([
    'open',
    'in',
    'high',
    'less',
    'none',
  ]);
  expect(classesBetween([0.06], diode)).toEqual(new Set(['in']));
});

test('amperes are judged against what the sound machine draws', () => {
  expect(classOf(4, amps)).toBe('full');
  expect(classOf(0.1, amps)).toBe('none');
  expect(classOf(2, amps)).toBe('half');
});

describe('a suspect of many degrees allows every class between its ends', () => {
  test('volts from nothing to full', () => {
    expect([...classesBetween([0, 12.5], volts)].sort()).toEqual(['full', 'half', 'low', 'none', 'trace', 'weak']);
  });

  test('one degree that lies well inside a class allows only that', () => {
    expect([...classesBetween([12.5], volts)]).toEqual(['full']);
    expect([...classesBetween([0], volts)]).toEqual(['none']);
  });

  test('one at the edge of a class allows both, since meters and machines differ', () => {
    expect([...classesBetween([0.25], volts)].sort()).toEqual(['none', 'trace']);
  });

  test('open at one end and finite at the other', () => {
    expect(classesBetween([57, null], ohmsOf(57))).toEqual(new Set(['in', 'open']));
  });
});

describe('limits', () => {
  const drops = hobbinBook().limits.filter((l) => l.kind === 'voltage drop' && l.maxVolts !== undefined);
  const [named] = drops.filter((l) => l.from !== undefined && l.to !== undefined);

  test("are the manual's where it names the two points, in either order", () => {
    expect(drops.length).toBeGreaterThan(0);
    expect(limitFor(hobbinBook(), named.from ?? '', named.to ?? '')).toBe(named.maxVolts);
    expect(limitFor(hobbinBook(), named.to ?? '', named.from ?? '')).toBe(named.maxVolts);
  });

  test('are a quarter of a volt where it names none', () => {
    expect(limitFor(hobbinBook(), 'X1.2.a', 'K1.86')).toBe(0.25);
  });
});

/** The instruments in hand at the real machine: what they load, and what happens when they are used wrongly. */
import { describe, expect, test } from 'vitest';
import { LOW_OHMS } from '../../src/instruments/index.ts';
import { type Bench, firstBench, Rig } from '../../src/job/index.ts';
import type { Fault } from '../../src/parts/index.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { act, work, workedAt } from './at-work.ts';

const AT_BATTERY = 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4';

describe('in the current jack, across the battery', () => {
  const attempt = workedAt('job-05', `${AT_BATTERY}; dial amps; jack amps; red G1.+`);
  const touched = work(attempt, 'black G1.-');

  test('the fuse of the meter blows at the touch', () => {
    expect(touched.seen.codes).toContain('jack-fuse-blown');
    expect(attempt.bench.jackFuseBlown).toBe(true);
  });

  test('the battery is not loaded by a meter whose fuse is gone', () => {
    expect(attempt.rig.world.voltsBetween('G1.+', 'G1.-')).toBeGreaterThan(12);
  });

  test('the volts jack still works', () => {
    const shown = work(attempt, 'jack volts; dial volts-dc; read').seen.display;
    expect(Number(shown?.text)).toBeGreaterThan(12);
  });

  test('a new fuse measures amperes again, and blows again where nothing was learned', () => {
    const before = attempt.price;
    act(attempt, { do: 'renewFuse' });
    expect(attempt.bench.jackFuseBlown).toBe(false);
    expect(attempt.price).toBeGreaterThan(before);
    expect(attempt.refusal({ do: 'renewFuse' })?.code).toBe('already');
    expect(work(attempt, 'dial amps; jack amps').seen.codes).toContain('jack-fuse-blown');
  });
});

test('ohms on a live circuit is overload and marked, on a dead one it is not', () => {
  const attempt = workedAt('job-05', `${AT_BATTERY}; dial ohms; red G1.+; black G1.-`);
  expect(work(attempt, 'read').seen.display).toEqual({ text: 'OL', unit: 'MΩ', live: true });
  expect(work(attempt, 'red G1.-; black G1.+; read').seen.display?.text).toBe('OL');
  const dead = workedAt('job-05', 'walk BATT; operate iso 0; walk ENGL; with clothing; open AC5; dial ohms');
  const shown = work(dead, 'red K1.86; black K1.85; read').seen.display;
  expect(shown?.live).toBeUndefined();
  expect(Number(shown?.text)).toBeGreaterThan(10);
});

describe('the display follows the dial, and only a lead in its own jack brings it something', () => {
  const shownAt = (dial: string, jack: string, more = '') => {
    const attempt = workedAt('job-05', `${AT_BATTERY}; dial ${dial}; jack ${jack}; red G1.+; black G1.-; ${more}`);
    return { attempt, shown: work(attempt, 'read').seen };
  };

  test('amperes with the lead in the volts jack: none flow, and no fuse blows', () => {
    const { attempt, shown } = shownAt('amps', 'volts');
    expect(shown.display).toEqual({ text: '0.000', unit: 'A' });
    expect(attempt.bench.jackFuseBlown).toBe(false);
  });

  test('volts with the lead in the current jack: nought, though the battery is full, and the fuse is gone', () => {
    const { attempt, shown } = shownAt('volts-dc', 'amps');
    expect(shown.display).toEqual({ text: '0.000', unit: 'V' });
    expect(attempt.bench.jackFuseBlown).toBe(true);
  });

  test.each(['ohms', 'continuity'])('%s with the lead in the current jack: overload, and no beep', (dial) => {
    const { shown } = shownAt(dial, 'amps');
    expect(shown.display?.text).toBe('OL');
    expect(shown.display?.beep ?? false).toBe(false);
  });

  test('the current jack loads a circuit on the volts dial too: a lamp in series with it lights', () => {
    // The beacon's fuse is out: the meter's shunt takes its place.
    const inPlaceOfFuse = 'walk CFUSE; open AC1; pull F26; walk CDASH; operate beacon 1; operate key run; walk CFUSE';
    const attempt = workedAt('job-05', `${inPlaceOfFuse}; dial volts-dc; jack amps; red F26.a; black F26.b`);
    expect(work(attempt, 'read').seen.display?.text).toBe('0.000');
    expect(attempt.rig.world.voltsBetween('F26.b', 'GND3.L')).toBeGreaterThan(12);
    expect(work(attempt, 'jack volts; read').seen.display?.text).not.toBe('0.000');
    expect(attempt.rig.world.voltsBetween('F26.b', 'GND3.L')).toBeLessThan(1);
  });
});

test('a fuse of the meter pops once; from then on its current jack is open and shows no amperes', () => {
  const attempt = workedAt('job-05', `${AT_BATTERY}; dial amps; jack amps; red G1.+; black G1.-`);
  expect(attempt.records.filter((r) => r.seen.codes.includes('jack-fuse-blown'))).toHaveLength(1);
  for (let i = 0; i < 3; i++) {
    const { display, codes } = work(attempt, 'read').seen;
    expect(display).toEqual({ text: '0.000', unit: 'A' });
    expect(codes).not.toContain('jack-fuse-blown');
  }
});

/** The far side of a corroded pin with its load taken off: K1 is out, so that only the instrument draws current. */
const AT_K1 =
  'with chocks; with helperClear; walk ENGL; with clothing; open AC5; pull K1; helper call; with leadsClipped';

test('a test lamp loads what it touches: full volts on the meter, and the lamp is not bright', () => {
  const meter = workedAt('job-04', `${AT_K1}; dial volts-dc; red K1.86; black GND2.L; with helperClear`);
  expect(Number(work(meter, 'operate key start').seen.display?.text)).toBeGreaterThan(12);
  const lamp = workedAt('job-04', `${AT_K1}; take lamp; red K1.86; black GND2.L; with helperClear`);
  expect(['dark', 'glimmer', 'dim']).toContain(work(lamp, 'operate key start').seen.display?.text);
});

describe('a ghost on an open wire', () => {
  // The wire behind the bulkhead hangs open, and 1 Mohm of dirt leads to it from the battery.
  const leak: Fault = {
    at: 'W:206B',
    mode: 'leak',
    changes: [
      { kind: 'series', element: 'X:X1.2', ohms: null },
      { kind: 'bridge', a: 'G1.+', b: 'X1.2.b', ohms: 1e6 },
    ],
    cures: [],
  };
  const shownWith = (dial: Bench['dial'], instrument: Bench['instrument'] = 'meter') => {
    const rig = Rig.arriving(hobbinModel(), [leak], {});
    const hands: Bench = { ...firstBench(rig.world.model.book), unplugged: ['X3'], instrument, dial };
    const bench = { ...hands, leads: { red: 'X3.3.a', black: 'G1.-' } };
    const seen = rig.run([{ hands: bench }, { pass: 500 }, { notice: bench.zone, bench }]);
    return seen.display?.text ?? '';
  };

  test('stands on 10 Mohm, and goes under low impedance and under the test lamp', () => {
    expect(Number(shownWith('volts-dc'))).toBeGreaterThan(11);
    expect(Number(shownWith('volts-lo'))).toBeLessThan(0.1);
    expect(shownWith('volts-lo', 'lamp')).toBe('dark');
  });
});

test('low impedance loads the circuit only from the volts jack, and lets go when the dial is turned', () => {
  const attempt = workedAt('job-05', `${AT_BATTERY}; dial volts-lo; red G1.+; black G1.-`);
  const load = () => attempt.rig.world.changes.filter((c) => c.kind === 'bridge' && c.ohms === LOW_OHMS).length;
  expect(load()).toBe(1);
  expect(Number(work(attempt, 'read').seen.display?.text)).toBeGreaterThan(12);
  expect([work(attempt, 'dial volts-dc'), load()][1]).toBe(0);
  expect([work(attempt, 'dial volts-lo; jack amps'), load()][1]).toBe(0);
  expect(work(attempt, 'read').seen.display?.text).toBe('0.000');
});

describe('the buttons', () => {
  const shown = (attempt: ReturnType<typeof workedAt>, text: string) => work(attempt, text).seen.display;

  test('zero with both leads on one point takes their own ohms off, until the dial is turned', () => {
    const attempt = workedAt(
      'job-05',
      'walk BATT; operate iso 0; with eyeProtection; with noFlame; with jewelryOff; open AC4; dial ohms',
    );
    expect(shown(attempt, 'red G1.+; black G1.+; read')?.text).toBe('0.2');
    const zero = work(attempt, 'zero on');
    expect(zero.seen.display?.text).toBe('0.0');
    expect(zero.cost.tenths).toBe(10 * attempt.model.book.costs.minutes.readingOhm);
    expect(attempt.refusal({ do: 'zero', on: true })?.code).toBe('already');
    expect(shown(attempt, 'zero off')?.text).toBe('0.2');
    expect(shown(attempt, 'zero on; dial off; dial ohms; read')?.text).toBe('0.2');
  });

  test('overload cannot be taken off', () => {
    const attempt = workedAt('job-05', `${AT_BATTERY}; dial ohms; red G1.+; black G1.-`);
    expect(shown(attempt, 'zero on')?.text).toBe('OL');
    expect(attempt.bench.zero).toBeNull();
  });

  test('a range that is kept shows overload for what is too much, and lets go with the dial', () => {
    const attempt = workedAt('job-05', `${AT_BATTERY}; dial volts-dc; red G1.+; black G1.-`);
    expect(shown(attempt, 'range 0; read')?.text).toBe('OL');
    expect(shown(attempt, 'range 2; read')?.text).toMatch(/^12\.\d$/);
    expect(shown(attempt, 'range auto; read')?.text).toMatch(/^12\.\d\d$/);
    expect(attempt.refusal({ do: 'range', to: 5 })?.code).toBe('unknown');
    work(attempt, 'range 1; dial continuity');
    expect(attempt.bench.range).toBeNull();
    expect(attempt.refusal({ do: 'range', to: 0 })?.code).toBe('unknown');
  });

  test('minimum and maximum keep the dip of a start after it is over', () => {
    const attempt = workedAt('job-11', `with chocks; ${AT_BATTERY}; helper call; with helperClear; dial volts-dc`);
    const rest = shown(attempt, 'red G1.+; black G1.-; minmax on; read');
    expect(rest?.least).toBe(rest?.most);
    work(attempt, 'operate key start');
    const after = shown(attempt, 'read');
    const [least, most] = [after?.least, after?.most].map((text) => Number.parseFloat(text ?? ''));
    expect(after?.most).toMatch(/ V$/);
    expect(least).toBeLessThan(11);
    expect(most).toBeGreaterThan(12);
    expect(Number(after?.text)).toBeGreaterThan(12);
    const moved = shown(attempt, 'red G1.-; red G1.+; read');
    expect(Number.parseFloat(moved?.least ?? '')).toBeGreaterThan(12);
    expect(shown(attempt, 'minmax off; read')?.least).toBeUndefined();
    expect(attempt.refusal({ do: 'minmax', on: false })?.code).toBe('already');
    work(attempt, 'dial ohms');
    expect(attempt.refusal({ do: 'minmax', on: true })?.code).toBe('unknown');
  });
});

test('diode test sends a current of its own: live is overload, and costs as an ohms reading does', () => {
  const attempt = workedAt('job-05', `${AT_BATTERY}; dial diode; red G1.+; black G1.-`);
  const reading = work(attempt, 'read');
  expect(reading.seen.display).toEqual({ text: 'OL', unit: 'V', live: true });
  expect(reading.cost.tenths).toBe(10 * attempt.model.book.costs.minutes.readingOhm);
  expect(work(attempt, 'jack amps; read').seen.display).toEqual({ text: 'OL', unit: 'V' });
});

test('on a machine whose line is whole the same lamp is bright', () => {
  const lamp = workedAt('job-09', `${AT_K1}; take lamp; red K1.86; black GND2.L; with helperClear`);
  expect(work(lamp, 'operate key start').seen.display?.text).toBe('bright');
});

test('a display that does not stand still says between what it moves', () => {
  const attempt = workedAt('job-01', `with chocks; ${AT_BATTERY}; helper call; with helperClear`);
  const shown = work(attempt, 'dial volts-dc; red G1.+; black G1.-; operate key start').seen.display;
  expect(shown?.text).toMatch(/^\d+\.\d+$/);
  if (shown?.from !== undefined) expect(Number(shown.from)).toBeLessThan(Number(shown.to));
});

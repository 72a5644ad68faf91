/** The book's timings (electrical book, section 4) and what its controllers promise, on the sound machine. */
import { describe, expect, it } from 'vitest';
import { World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { drive } from '../support/drive.ts';
import { momentOf, watch } from '../support/edges.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { STATES } from '../support/states.ts';

const model = hobbinModel();
/** Fuel off, so that it only cranks (book, section 1: pull F32). */
const NO_FUEL: Change = { kind: 'series', element: 'F32.link', ohms: null };

function near(got: number | null, ms: number, within: number): void {
  expect(got).not.toBeNull();
  expect(Math.abs((got ?? 0) - ms), `${got} ms`).toBeLessThanOrEqual(within);
}

describe('key on and off', () => {
  it('A1 wakes 0.3 s after the key (wake wire from key 15 through F21); the pump primes for 3 s', () => {
    const world = new World(model);
    world.setControl('key', 'run');
    const moves = watch(world, 6000, ['A1.MR', 'A1.RUN', 'A1.FP', 'K9']);
    near(momentOf(moves, 'A1.MR', 'on'), 300, 1);
    // Its main relay K4 needs 8 ms more to feed it.
    near(momentOf(moves, 'A1.RUN', 'on'), 308, 2);
    const from = momentOf(moves, 'A1.FP', 'on') ?? 0;
    near(momentOf(moves, 'A1.FP', 'off'), from + 3000, 2);
    near(momentOf(moves, 'K9', 'off'), from + 3005, 3);
  });

  it('K4 holds for 2 s after key off, then A1 sleeps', () => {
    const world = drive({ model, settings: STATES.run });
    world.setControl('key', 'off');
    const moves = watch(world, 4000, ['K4', 'A1.RUN']);
    near(momentOf(moves, 'K4', 'off'), 2000 + 5, 3);
    expect(momentOf(moves, 'A1.RUN', 'off')).not.toBeNull();
  });
});

describe('crank timer', () => {
  const cranking = drive({ model, settings: STATES.crank, changes: [NO_FUEL] });
  const begun = 600;

  it('A1 withholds crank enable after 30 s: K1 falls out with the key still in start', () => {
    const moves = watch(cranking, 32_000, ['A1.CE', 'K1', 'M1']);
    near(momentOf(moves, 'A1.CE', 'off'), 30_000 - begun, 50);
    expect(cranking.stateOf('K1')).toBe('off');
    expect(cranking.stateOf('M1')).toBe('out');
    expect(cranking.controlOf('key')).toBe('start');
  });

  it('another turn of the key within 60 s does nothing but click K2', () => {
    cranking.setControl('key', 'run');
    cranking.advance(30_000);
    cranking.setControl('key', 'start');
    cranking.advance(500);
    expect([cranking.stateOf('K2'), cranking.stateOf('K1')]).toEqual(['on', 'off']);
    cranking.setControl('key', 'run');
  });

  it('re-arms 60 s after the key was let go', () => {
    const moves = watch(cranking, 61_000, ['A1.CE']);
    near(momentOf(moves, 'A1.CE', 'on'), 60_000, 50);
    cranking.setControl('key', 'start');
    cranking.advance(500);
    expect(cranking.stateOf('M1')).toBe('in');
  });
});

describe('engine', () => {
  it('fires 0.8 s above 130 crank rpm with fuel, and idles at 850 rpm once the key is let go', () => {
    const world = drive({ model, settings: STATES.run });
    world.setControl('key', 'start');
    let above: number | null = null;
    const begin = world.state.timeMs;
    let fired: number | null = null;
    world.advance(2000, (now) => {
      if (above === null && now.quantityOf('rpm') > 130) above = now.state.timeMs - begin;
      if (fired === null && now.stateOf('engine') === 'running') fired = now.state.timeMs - begin;
    });
    near(fired, (above ?? 0) + 800, 10);
    world.setControl('key', 'run');
    world.advance(3000);
    expect(world.quantityOf('rpm')).toBeCloseTo(850, -1);
    expect(world.stateOf('M1')).toBe('out');
  });

  const starved: [string, string, Change[]][] = [
    ['an empty tank', 'level=180', []],
    ['the pump without feed', '', [NO_FUEL]],
    ['the speed sensor open', '', [{ kind: 'series', element: 'B3.coil', ohms: null }]],
  ];
  it.each(starved)('cranks but never fires with %s', (_, settings, changes) => {
    const world = drive({ model, settings: `key=start ${settings}`.trim(), changes });
    world.advance(10_000);
    expect(world.stateOf('engine')).toBe('stopped');
    expect(world.quantityOf('rpm')).toBeCloseTo(220, -1);
  });

  it('with the engine running the key in start does not bring the starter in (CE only below 600 rpm)', () => {
    const world = drive({ model, settings: STATES.idle });
    world.setControl('key', 'start');
    world.advance(1000);
    expect([world.stateOf('K1'), world.stateOf('M1')]).toEqual(['off', 'out']);
  });

  it('stops when the key is turned off', () => {
    const world = drive({ model, settings: STATES.idle });
    world.setControl('key', 'off');
    world.advance(5000);
    expect([world.stateOf('engine'), world.quantityOf('rpm')]).toEqual(['stopped', 0]);
  });
});

describe('flasher', () => {
  const flashes = (changes: Change[]): number => {
    const world = drive({ model, settings: 'key=run turn=L', changes });
    return watch(world, 60_000, ['K13']).filter((move) => move.state === 'on').length;
  };

  it('90 a minute with all lamps, 180 with less than 30 W', () => {
    expect(Math.abs(flashes([]) - 90)).toBeLessThanOrEqual(2);
    expect(Math.abs(flashes([{ kind: 'series', element: 'E5.filL', ohms: null }]) - 180)).toBeLessThanOrEqual(4);
  });

  it('starts at 8 V, goes on down to 7 V and stays out until it has 8 V again (book, relays)', () => {
    const world = drive({ model, settings: 'hazard=1' });
    const flashesAt = (openVolts: number): number => {
      world.setChanges([{ kind: 'battery', element: 'G1.cell', openVolts }]);
      world.advance(500);
      return watch(world, 3000, ['K13']).filter((move) => move.state === 'on').length;
    };
    expect(flashesAt(12.65)).toBeGreaterThan(2);
    expect(flashesAt(7.6)).toBeGreaterThan(2);
    expect(flashesAt(6.9)).toBe(0);
    expect(world.ampsIn('E5.filL')).toBeCloseTo(0, 3);
    expect(flashesAt(7.6)).toBe(0);
    expect(flashesAt(8.6)).toBeGreaterThan(2);
  });
});

describe('start interlocks', () => {
  it.each([
    ['lever F', 'crank_F', 'K2'],
    ['seat empty', 'crank_seatoff', 'K1'],
    ['brake released', 'crank_nobrake', 'K1'],
  ])('no crank with %s', (_, state, relay) => {
    const world = drive({ model, settings: STATES[state] });
    expect([world.stateOf(relay), world.stateOf('M1'), world.quantityOf('rpm')]).toEqual(['off', 'out', 0]);
  });
});

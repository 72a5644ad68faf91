/** Every relay of the book on a bench supply: where it pulls in and lets go, and how long it takes. */
import { describe, expect, it } from 'vitest';
import { World } from '../../src/machine/index.ts';
import { benchModel, benchSupply, joint, partOf } from '../support/bench-book.ts';
import { momentOf, watch } from '../support/edges.ts';

/** Coil ohms with suppression, must operate and must release volts (electrical book, table of relays). */
const RELAYS: [id: string, ohms: number, pullIn: number, dropOut: number][] = [
  ['K1', 71.58, 7.2, 2.0],
  ['K2', 79.48, 7.2, 1.8],
  ['K3', 75.56, 7.0, 1.8],
  ['K4', 79.48, 7.0, 1.6],
  ['K5', 79.48, 7.2, 1.8],
  ['K6', 79.48, 7.2, 1.8],
  ['K7', 79.48, 7.2, 1.8],
  ['K8', 79.48, 7.2, 1.8],
  ['K9', 79.48, 7.0, 1.6],
  ['K10', 22, 7.5, 2.5],
  ['K11', 79.48, 7.2, 1.8],
  ['K12', 79.48, 7.2, 1.8],
];
const SUPPLY_VOLTS = 12;
const LONG_MS = 100;

function onBench(id: string): World {
  const part = partOf(id);
  if (part.kind !== 'relay') throw new Error(`${id} is no relay`);
  const [plus, minus] = part.coil.map((terminal) => `${id}.${terminal}`);
  const joints = [joint('plus', 'PS.+', plus), joint('minus', 'PS.-', minus)];
  const world = new World(benchModel([benchSupply(SUPPLY_VOLTS), part], joints));
  world.setQuantity('knob', 1e6);
  world.advance(LONG_MS);
  return world;
}

/** Turns the knob so that the coil has these volts, and waits. */
function give(world: World, volts: number, coilOhms: number): void {
  world.setQuantity('knob', Math.max(0, (coilOhms * SUPPLY_VOLTS) / volts - coilOhms));
  world.advance(LONG_MS);
}

describe.each(RELAYS)('relay %s (%d ohm, pulls at %d V, lets go at %d V)', (id, ohms, pullIn, dropOut) => {
  it('pulls in at its volts and not 2 % below; holds above its drop-out and lets go 2 % below', () => {
    const world = onBench(id);
    give(world, pullIn * 0.98, ohms);
    expect(world.stateOf(id)).toBe('off');
    give(world, pullIn * 1.02, ohms);
    expect(world.stateOf(id)).toBe('on');
    // In between it stays as it was: hysteresis (KUP Vol IV ch 5).
    give(world, dropOut * 1.02, ohms);
    expect(world.stateOf(id)).toBe('on');
    give(world, dropOut * 0.98, ohms);
    expect(world.stateOf(id)).toBe('off');
    give(world, pullIn * 0.98, ohms);
    expect(world.stateOf(id)).toBe('off');
  });

  it('is a relay that could be bought', () => {
    // Pick-up at most 75 %, drop-out at least 5 % of rated volts (general relay datasheet).
    expect(pullIn).toBeLessThanOrEqual(0.75 * 12);
    expect(dropOut).toBeGreaterThanOrEqual(0.05 * 12);
    // Coils of mini relays 90 ohm +/- 10 %, start relays 40 to 100 ohm; a heavy magnetic switch draws up to about 1 A.
    expect(ohms).toBeGreaterThanOrEqual(id === 'K10' ? 12 : 40);
    expect(ohms).toBeLessThanOrEqual(100);
  });

  it('takes 8 ms to pull in and 5 ms to let go (book, timings)', () => {
    const world = onBench(id);
    world.setQuantity('knob', 0);
    expect(momentOf(watch(world, LONG_MS, [id]), id, 'on')).toBe(8);
    world.setQuantity('knob', 1e6);
    expect(momentOf(watch(world, LONG_MS, [id]), id, 'off')).toBe(5);
  });

  it('closes its make contact and opens its rest contact when on', () => {
    const world = onBench(id);
    const part = partOf(id);
    if (part.kind !== 'relay') return;
    const ohmsTo = (terminal: string) =>
      world.electrics.network.resistance(...ends(world, `${id}.${part.common}`, `${id}.${terminal}`));
    expect(ohmsTo(part.make)).toBeGreaterThan(60e6);
    if (part.rest !== undefined) expect(ohmsTo(part.rest)).toBeLessThan(0.05);
    give(world, SUPPLY_VOLTS, ohms);
    // New contacts: 2 to 15 mohm (mini relay datasheets).
    expect(ohmsTo(part.make)).toBeLessThan(0.016);
    if (part.rest !== undefined) expect(ohmsTo(part.rest)).toBeGreaterThan(60e6);
  });
});

function ends(world: World, a: string, b: string): [number, number] {
  return [world.model.pointIndex.get(a) ?? -1, world.model.pointIndex.get(b) ?? -1];
}

it('a coil behind 100 ohm does not pull in, and one that has pulled in stays in (arithmetic on 7.2 and 1.8 V)', () => {
  const world = onBench('K2');
  world.setQuantity('knob', 100);
  world.advance(LONG_MS);
  expect(world.stateOf('K2')).toBe('off');
  world.setQuantity('knob', 0);
  world.advance(LONG_MS);
  world.setQuantity('knob', 100);
  world.advance(LONG_MS);
  expect(world.stateOf('K2')).toBe('on');
});

/** Wires, shorts and islands of the sound machine. */

import { describe, expect, it } from 'vitest';
import { readMeter } from '../../src/instruments/index.ts';
import { pinFaults } from '../../src/machine/harness-faults.ts';
import { World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { drive } from '../support/drive.ts';
import { momentOf, watch } from '../support/edges.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { handsOf } from '../support/patch.ts';
import { STATES } from '../support/states.ts';

const model = hobbinModel();

describe('shorts to ground', () => {
  const chafed: Change = { kind: 'chafe', wire: '202C', at: 0.5, to: 'GND3.L', ohms: 0.05 };

  it('202C chafed: key to start blows F10 and leaves F1, the next fuse before it, whole', () => {
    const world = drive({ model, settings: 'key=run lever=F', changes: [chafed] });
    expect(world.stateOf('F10')).toBe('intact');
    world.setControl('key', 'start');
    const moves = watch(world, 1000, ['F10', 'F1', 'FM2']);
    expect(moves.map((move) => [move.region, move.state])).toEqual([['F10', 'blown']]);
    // 5 A blade on a dead short of more than 100 A: well within 20 ms (ISO 8820-3 at six times: 0.02 to 0.1 s).
    expect(momentOf(moves, 'F10', 'blown')).toBeLessThan(20);
    expect(world.stateOf('K2')).toBe('off');
  });

  it('with a new fuse it blows again: find the short first', () => {
    const world = drive({ model, settings: STATES.crank_F, changes: [chafed] });
    world.setControl('key', 'run');
    world.setRegion('F10', 'intact');
    world.advance(500);
    expect(world.stateOf('F10')).toBe('intact');
    world.setControl('key', 'start');
    world.advance(500);
    expect(world.stateOf('F10')).toBe('blown');
  });

  it('a wire isolated at both ends and chafed reads its short to ground, and none when sound', () => {
    const hands = ['pull K1', 'unplug X10'].flatMap((step) => handsOf(model, step).changes);
    const short: Change = { kind: 'chafe', wire: '207A', at: 0.5, to: 'GND2.M', ohms: 0.1 };
    const ohms = (changes: Change[]) => {
      const world = drive({ model, settings: 'iso=0', changes });
      return readMeter(world, 'ohms', 'K1.85', 'GND2.M').value;
    };
    expect(ohms(hands)).toBeNull();
    expect(ohms([short, ...hands])).toBeGreaterThan(0.1);
    expect(ohms([short, ...hands])).toBeLessThan(0.13);
  });
});

describe('floating points', () => {
  it('a wire unplugged at both ends reads 0 V to ground and OL in ohms', () => {
    const hands = ['unplug X1', 'unplug X3'].flatMap((step) => handsOf(model, step).changes);
    const world = drive({ model, settings: STATES.crank, changes: hands });
    for (const point of ['X1.2.b', 'X3.3.a']) {
      expect(readMeter(world, 'volts-dc', point, 'GND1.L')).toMatchObject({ text: '0.000', unit: 'V' });
      expect(readMeter(world, 'ohms', point, 'GND1.L').text).toBe('OL');
    }
    // The wire itself is whole.
    expect(readMeter(world, 'ohms', 'X1.2.b', 'X3.3.a').value).toBeLessThan(0.2);
  });

  it('with the disconnect switch off everything behind it reads 0 V, the battery its rest volts', () => {
    const world = drive({ model, settings: STATES.isolated });
    for (const point of ['S1.B', 'M1.30', 'BUS2.IN', 'K1.30']) {
      expect(readMeter(world, 'volts-dc', point, 'G1.-').text).toBe('0.000');
    }
    expect(readMeter(world, 'volts-dc', 'G1.+', 'G1.-').text).toBe('12.65');
    expect(readMeter(world, 'volts-dc', 'G1.+', 'S1.B').value).toBeLessThan(12.66);
  });

  it('draws no more than 40 mA with the key off, a quarter of an hour after (service table)', () => {
    const world = new World(model);
    world.setControl('key', 'run');
    world.advance(10_000);
    world.setControl('key', 'off');
    world.advance(900_000);
    expect(world.ampsIn('W:101A')).toBeGreaterThan(0.015);
    expect(world.ampsIn('W:101A')).toBeLessThan(0.04);
  });
});

describe('water in a plug', () => {
  const families = model.book.connectors.flatMap((c) => c.pins.flatMap((pin) => pinFaults(c, pin)));
  const wet = families.filter((f) => f.mode === 'water_bridge');

  it('lies between neighbours of the plugs that the book calls wet, and is dried by cleaning', () => {
    const plugs = model.book.connectors.filter((c) => c.failures.some((f) => f.mode === 'water_bridge'));
    expect(wet).toHaveLength(plugs.reduce((sum, c) => sum + c.pins.length - 1, 0));
    for (const family of wet) expect(family.fault(2000).cures).toEqual(['clean']);
  });

  it('is a path of its own: never more ohms between the two pins than the water has', () => {
    for (const family of wet) {
      const [change] = family.fault(2000).changes;
      if (change.kind !== 'bridge') throw new Error(`${family.at}: ${change.kind}`);
      const world = drive({ model, settings: STATES.isolated, changes: [change] });
      expect(readMeter(world, 'ohms', change.a, change.b).value, family.at).toBeLessThan(2001);
    }
  });
});

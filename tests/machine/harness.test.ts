/** Wires, shorts and islands of the sound machine. */

import { describe, expect, it } from 'vitest';
import { readMeter } from '../../src/instruments/index.ts';
import { pinFaults, wireFaults } from '../../src/machine/harness-faults.ts';
import { World } from '../../src/machine/index.ts';
import { surroundingsOf } from '../../src/machine/surroundings.ts';
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

describe('what a wire touches', () => {
  const { metal, feed, beside } = surroundingsOf(model);
  const wire = (id: string) => {
    const found = model.wires.get(id);
    if (found === undefined) throw new Error(`no wire ${id}`);
    return found;
  };

  // Training faults of the book: 207 and 404 to the engine block, 203 to the dash, 901 to the cab, 806 and 814 to the frame.
  it.each([
    ['207A', 'GND2.M'],
    ['404A', 'GND2.M'],
    ['203A', 'GND4.M'],
    ['901G', 'GND3.M'],
    ['202C', 'GND3.M'],
    ['806C', 'GND1.M'],
    ['101A', 'GND1.M'],
    ['655B', 'GND5.M'],
    ['703C', 'GND7.M'],
  ])('%s rubs on the metal where it runs', (id, stud) => {
    expect(metal(wire(id))).toBe(stud);
  });

  it('a lasting feed has battery volts with everything off, and a wire that has them itself is not shorted to one', () => {
    const world = new World(model);
    for (const each of model.book.wires) {
      const volts = world.voltsBetween(each.from, model.book.reference);
      const fed = feed(each);
      if (fed === undefined) continue;
      expect(world.voltsBetween(fed.from, model.book.reference), each.id).toBeGreaterThan(12.5);
      expect(fed.harness).toBe(each.harness);
      if (each.number === '105' || each.number === '110') expect(volts, each.id).toBeLessThan(1);
    }
  });

  it('its neighbours are in the next cavity of a plug or in its bundle, and of another number', () => {
    for (const each of model.book.wires) {
      for (const other of beside(each)) {
        expect(wire(other.wire).number, each.id).not.toBe(each.number);
        expect(wire(other.wire).harness, each.id).toBe(each.harness);
      }
    }
    // CAN H and L lie side by side (the book's fault 67).
    expect(beside(wire('901D')).map((other) => other.wire)).toContain('902D');
  });

  it('each pair is told once', () => {
    const pairs = model.book.wires.flatMap((w) => beside(w).map((other) => [w.id, other.wire].sort().join(' ')));
    expect(new Set(pairs).size).toBe(pairs.length);
  });
});

describe('faults of insulation', () => {
  const byMode = new Map<string, number>();
  for (const each of model.book.wires) {
    for (const { mode, weight } of wireFaults(model, each)) byMode.set(mode, (byMode.get(mode) ?? 0) + weight);
  }
  const total = [...byMode.values()].reduce((sum, weight) => sum + weight, 0);

  it.each(['leak', 'short_wire', 'short_supply'])('%s is seldom beside opens and grounds', (mode) => {
    expect(byMode.get(mode) ?? 0).toBeGreaterThan(0);
    expect(byMode.get(mode) ?? 0).toBeLessThan(0.05 * total);
    expect(byMode.get(mode) ?? 0).toBeLessThan(0.2 * (byMode.get('short_gnd') ?? 0));
  });

  it('a leak of the least ohms still lets a lamp of 2 W light: it is found by ohms or by the draw', () => {
    const leaks = wireFaults(model, model.book.wires.find((w) => w.id === '105B') ?? model.book.wires[0]);
    const [leak] = leaks.filter((f) => f.mode === 'leak');
    const amps = (ohms: number) =>
      new World(model, leak.fault(ohms).changes).ampsIn('W:101A') - new World(model).ampsIn('W:101A');
    // Ohm's law at the battery's volts.
    for (const ohms of leak.severities) expect(amps(ohms)).toBeCloseTo(12.65 / ohms, 4);
  });
});

describe('bad pins', () => {
  const families = model.book.connectors.flatMap((c) => c.pins.flatMap((pin) => pinFaults(model, c, pin)));
  const worst = (at: string) =>
    Math.max(...families.filter((f) => f.at === at && f.mode === 'corroded').flatMap((f) => f.severities));

  it('of a signal reach the ohms that a controller reads wrong (the book: 1,700 in a 5 V feed, 5,200 in an enable line)', () => {
    expect(worst('X:X3.5')).toBeGreaterThanOrEqual(1700);
    expect(worst('X:X4.16')).toBeGreaterThanOrEqual(5200);
    // A sense wire of 1 mm².
    expect(worst('X:X15.2')).toBeGreaterThanOrEqual(450);
  });

  it('of a load are as good as open long before', () => {
    expect(worst('X:X3.12')).toBeLessThan(1000);
  });
});

describe('water in a plug', () => {
  const families = model.book.connectors.flatMap((c) => c.pins.flatMap((pin) => pinFaults(model, c, pin)));
  const wet = families.filter((f) => f.mode === 'water_bridge');

  it('lies between pins of the plugs that the book calls wet, each pair once, and is dried by cleaning', () => {
    const plugs = model.book.connectors.filter((c) => c.failures.some((f) => f.mode === 'water_bridge'));
    const pairs = wet.map((family) =>
      family.fault(2000).changes.flatMap((c) => (c.kind === 'bridge' ? [c.a, c.b] : [])),
    );
    expect(new Set(wet.map((f) => f.at.slice(2).split('.')[0]))).toEqual(new Set(plugs.map((c) => c.id)));
    expect(pairs).toContainEqual(['X7.1.a', 'X7.2.a']);
    // The book's fault 84.
    expect(pairs).toContainEqual(['X7.1.a', 'X7.6.a']);
    expect(new Set(pairs.map((pair) => [...pair].sort().join(' '))).size).toBe(pairs.length);
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

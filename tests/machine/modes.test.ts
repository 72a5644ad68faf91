/** Ways in which parts fail, told by what a technician measures of them. */
import { describe, expect, it, test } from 'vitest';
import { readMeter } from '../../src/instruments/index.ts';
import type { World } from '../../src/machine/index.ts';
import { type Change, contentOf, type Fault } from '../../src/parts/index.ts';
import { drive } from '../support/drive.ts';
import { hobbinBook, hobbinModel } from '../support/hobbin.ts';
import { STATES } from '../support/states.ts';

const model = hobbinModel();
const { parts } = hobbinBook();

/** Faults of one part and mode, at the mildest and at the worst of each family. */
function faultsOf(id: string, mode: string): { mild: Fault; worst: Fault }[] {
  const part = parts.find((p) => p.id === id);
  if (part === undefined) throw new Error(`no part ${id}`);
  const families = contentOf(part).faults.filter((f) => f.mode === mode);
  if (families.length === 0) throw new Error(`${id} has no ${mode}`);
  return families.map(({ severities, fault }) => ({
    mild: fault(severities[0] ?? 0),
    worst: fault(severities[severities.length - 1] ?? 0),
  }));
}

const inState = (settings: string, changes: Change[] = []): World => drive({ model, settings, changes });
const [sound, idle] = [inState(STATES.isolated), inState(STATES.idle)];
const ohms = (world: World, a: string, b: string): number => readMeter(world, 'ohms', a, b).value ?? 1e12;
const charging = (world: World): number => world.voltsBetween('G2.B+', 'G2.31');

test.each(parts.map((part) => [part.id, part] as const))(
  '%s: every mode that the book lists can be suspected',
  (_, part) => {
    const { faults } = contentOf(part);
    for (const { mode, weight } of part.failures) {
      const own = faults.filter((f) => f.mode === mode);
      // The book's weight is shared out among them, and nothing is lost.
      expect([mode, own.reduce((sum, f) => sum + f.weight, 0)]).toEqual([mode, expect.closeTo(weight, 9)]);
    }
  },
);

describe('the alternator', () => {
  it('worn gives less and at last nothing: the battery goes down under load', () => {
    const [{ mild, worst }] = faultsOf('G2', 'weak');
    const lights = (changes: Change[]) => inState(STATES.lights, changes);
    const full = lights([]).ampsIn('W:301A');
    expect(Math.abs(lights(mild.changes).ampsIn('W:301A'))).toBeLessThanOrEqual(Math.abs(full) + 1e-9);
    expect(charging(inState(STATES.idle, worst.changes))).toBeLessThan(12.8);
    // With nothing coming from D+ its lamp glows, as it does at key on.
    expect(inState(STATES.idle, worst.changes).voltsBetween('G2.D+', 'G2.31')).toBeLessThan(2);
  });

  it('overcharges: above the 14.6 V at which lamps begin to die, never above what the diodes let through', () => {
    const [{ mild, worst }] = faultsOf('G2', 'overcharge');
    expect(charging(idle)).toBeLessThan(14.6);
    for (const { changes } of [mild, worst]) {
      const volts = charging(inState(STATES.idle, changes));
      expect(volts).toBeGreaterThan(14.6);
      expect(volts).toBeLessThan(16.3);
    }
  });

  it('with its exciting way open takes no lamp current at key on, and does not charge', () => {
    const [{ worst }] = faultsOf('G2', 'open_exc');
    const lamp = inState(STATES.run, worst.changes).voltsBetween('A2.2', 'A2.6');
    expect(inState(STATES.run).voltsBetween('A2.2', 'A2.6')).toBeGreaterThan(9);
    expect(lamp).toBeLessThan(0.5);
    expect(charging(inState(STATES.idle, worst.changes))).toBeLessThan(12.8);
  });

  it('leaks through its diodes: more than the 40 mA that the book allows with the key off', () => {
    const [{ worst }] = faultsOf('G2', 'leak');
    const draw = (changes: Change[]) => inState(STATES.off, changes).ampsIn('W:101A');
    expect(draw([])).toBeLessThan(0.04);
    expect(draw(worst.changes)).toBeGreaterThan(0.04);
  });
});

describe('the battery', () => {
  it('worn has more ohms than its own, full the same volts', () => {
    const [{ worst }] = faultsOf('G1', 'weak');
    const rest = inState(STATES.off, worst.changes).voltsBetween('G1.+', 'G1.-');
    expect(rest).toBeCloseTo(12.65, 2);
    const posts = (changes: Change[]) => inState(STATES.crank, changes).voltsBetween('G1.+', 'G1.-');
    expect(posts(worst.changes)).toBeLessThan(posts([]) - 1);
  });

  it('of another make fails from its own volts and ohms', () => {
    const g1 = parts.find((p) => p.id === 'G1');
    if (g1?.kind !== 'general') throw new Error('G1');
    const elements = g1.elements.map((e) =>
      e.law.kind === 'battery' ? { ...e, law: { ...e.law, ohms: 0.02, openVolts: 12.8 } } : e,
    );
    for (const { mode, severities, fault } of contentOf({ ...g1, elements }).faults) {
      for (const change of severities.flatMap((degree) => fault(degree).changes)) {
        if (change.kind !== 'battery') continue;
        expect(change.ohms, mode).toBeGreaterThan(0.02);
        if (change.openVolts !== undefined) expect(change.openVolts).toBeLessThan(12.8);
      }
    }
  });
});

describe('senders and terminators', () => {
  it('a sensor drifts to either side of its own ohms', () => {
    const own = ohms(sound, 'B1.1', 'B1.2');
    const [up, down] = faultsOf('B1', 'drift').map(({ worst }) => inState(STATES.isolated, worst.changes));
    expect(ohms(up, 'B1.1', 'B1.2')).toBeGreaterThan(own * 1.5);
    expect(ohms(down, 'B1.1', 'B1.2')).toBeLessThan(own * 0.7);
  });

  it('a sensor shorted inside reads next to nothing', () => {
    const [{ worst }] = faultsOf('B1', 'shorted');
    expect(ohms(inState(STATES.isolated, worst.changes), 'B1.1', 'B1.2')).toBeLessThan(1);
  });

  it('a terminator that drifts leaves the bus away from its 60 ohms', () => {
    const bus = (changes: Change[]) => ohms(inState(STATES.isolated, changes), 'R2.H', 'R2.L');
    expect(bus([])).toBeGreaterThan(55);
    expect(bus([])).toBeLessThan(65);
    const [up, down] = faultsOf('R2', 'drift').map(({ worst }) => bus(worst.changes));
    expect(up).toBeGreaterThan(70);
    expect(down).toBeLessThan(50);
  });
});

describe('motors', () => {
  it('held fast draws what a standing one does: more than turning', () => {
    const blowing = `${STATES.run} blower=3`;
    const fan = (changes: Change[]) => Math.abs(inState(blowing, changes).ampsIn('M4.mot'));
    expect(fan(faultsOf('M4', 'stalled')[0].worst.changes)).toBeGreaterThan(1.5 * fan([]));
    expect(fan(faultsOf('M4', 'weak')[0].worst.changes)).toBeLessThan(0.5 * fan([]));
  });

  it('a valve that sticks takes the current that it always takes', () => {
    expect(faultsOf('Y1', 'stuck')[0].worst.changes).toEqual([]);
  });

  it('each step of the blower resistor has its own break', () => {
    const breaks = ['open_low', 'open_mid', 'open_link'].map((mode) => faultsOf('R4', mode)[0].worst.changes);
    const [low, mid, link] = breaks.map((changes) => inState(STATES.isolated, changes));
    expect(ohms(low, 'R4.1', 'R4.2')).toBeGreaterThan(1000);
    expect(ohms(low, 'R4.2', 'R4.3')).toBeLessThan(1);
    expect(ohms(mid, 'R4.2', 'R4.3')).toBeGreaterThan(1000);
    expect(ohms(link, 'R4.3', 'R4.M')).toBeGreaterThan(1000);
  });
});

describe('controllers', () => {
  it('dead it holds nothing on, though it is fed', () => {
    const [{ worst }] = faultsOf('A3', 'dead');
    const world = inState(STATES.work, worst.changes);
    expect(inState(STATES.work).stateOf('A3.RUN')).toBe('on');
    expect(world.stateOf('A3.RUN')).toBe('off');
    expect(Math.abs(world.ampsIn('Y1.coil'))).toBeLessThan(0.01);
    expect(world.voltsBetween('A3.1', 'A3.3')).toBeGreaterThan(12);
  });

  it.each([
    ['A1', 'sleep_fail'],
    ['A5', 'sleep_fail'],
    ['A4', 'draw'],
  ])('%s %s: more than 40 mA with the key off', (id, mode) => {
    const [{ worst }] = faultsOf(id, mode);
    const world = drive({ model, settings: 'key=run', changes: worst.changes });
    world.setControl('key', 'off');
    world.advance(10_000);
    expect(world.ampsIn('W:101A')).toBeGreaterThan(0.04);
  });

  it('a lamp of the cluster that burns out takes no current', () => {
    for (const { worst } of faultsOf('A2', 'lamp_open')) {
      const [change] = worst.changes;
      if (change.kind !== 'series') throw new Error(change.kind);
      expect(Math.abs(inState(STATES.lights, worst.changes).ampsIn(change.element))).toBeLessThan(1e-6);
    }
  });
});

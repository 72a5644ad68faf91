/** The hand meter: what it loads, what it shows, and that the machine's own netlist with the meter in it agrees. */
import { describe, expect, it } from 'vitest';
import {
  accuracy,
  DIODE_AMPS,
  INPUT_OHMS,
  LEAD_OHMS,
  LOW_OHMS,
  meterLoad,
  rangesOf,
  readMeter,
  show,
  TEST_VOLTS,
} from '../../src/instruments/index.ts';
import { netlistOf, World } from '../../src/machine/index.ts';
import type { ElementSpec, PartSpec } from '../../src/parts/index.ts';
import { benchModel, plainPart } from '../support/bench-book.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { solveNetlist } from '../support/ngspice.ts';
import { handsOf, patchChanges } from '../support/patch.ts';
import { STATES } from '../support/states.ts';

const ohm = (id: string, a: string, b: string, ohms: number): ElementSpec => ({
  id,
  a,
  b,
  law: { kind: 'resistance', ohms },
});

/** A source of some volts and resistors between `PS.+`, `PS.-` and more terminals. */
function bench(volts: number, ...resistors: ElementSpec[]): World {
  const source: ElementSpec = { id: 'source', a: 'PS.+', b: 'PS.-', law: { kind: 'source', volts, ohms: 1e-3 } };
  const part: PartSpec = plainPart('PS', [...(volts > 0 ? [source] : []), ...resistors]);
  const world = new World(benchModel([part]));
  world.settle();
  return world;
}

describe('volts', () => {
  it('10 Mohm on the lower of two 250 Mohm: 0.8889 V instead of 12 (KUP ch 8, "Voltmeter impact on measured circuit")', () => {
    const world = bench(24, ohm('r1', 'PS.+', 'PS.m', 250e6), ohm('r2', 'PS.m', 'PS.-', 250e6));
    const reading = readMeter(world, 'volts-dc', 'PS.m', 'PS.-');
    expect(reading.value).toBeCloseTo(0.8889, 4);
    expect(reading.text).toBe('0.889');
  });

  it('an open wire with 1 Mohm of leakage to 12.6 V shows 11.45 V, and a coil on it takes that away (arithmetic)', () => {
    const leak = ohm('leak', 'PS.+', 'PS.m', 1e6);
    expect(readMeter(bench(12.6, leak), 'volts-dc', 'PS.m', 'PS.-').text).toBe('11.45');
    expect(readMeter(bench(12.6, leak, ohm('coil', 'PS.m', 'PS.-', 90)), 'volts-dc', 'PS.m', 'PS.-').text).toBe(
      '0.001',
    );
  });

  it('has no less than the 10 Mohm that vehicle service asks for (meter requirement of a maker)', () => {
    expect(INPUT_OHMS).toBeGreaterThanOrEqual(10e6);
  });

  it('red and black exchanged change the sign, both on one point read nothing', () => {
    const world = drive({ model: hobbinModel(), settings: STATES.run });
    expect(readMeter(world, 'volts-dc', 'G1.+', 'G1.-').text).toBe('12.62');
    expect(readMeter(world, 'volts-dc', 'G1.-', 'G1.+').text).toBe('-12.62');
    expect(readMeter(world, 'volts-dc', 'G1.-', 'G1.-').text).toBe('0.000');
  });

  const probes: [patch: string, state: string, hands: string, red: string, black: string][] = [
    ['set canok 1', 'crank', '', 'K1.86', 'K1.85'],
    ['open X:X1.2', 'crank', '', 'X1.2.b', 'GND1.L'],
    ['res X:X3.3 60', 'crank', 'lift 208A,pull K1', 'K1.86', 'GND1.L'],
    ['elem S5.on open', 'run', '', 'S5.1', 'S5.2'],
    ['wshort 207A 0.5 GND2.M 0.1', 'crank_nobrake', 'lift 208A', 'K1.85', 'G1.-'],
    ['open W:206D', 'crank', 'unplug X3', 'X3.3.b', 'X3.3.a'],
  ];
  it.each(probes)(
    'as in ngspice with the meter in the netlist: %s, %s [%s], %s to %s',
    async (patch, state, hands, red, black) => {
      const model = hobbinModel();
      const changes = [...patchChanges(patch), ...handsOf(model, hands).changes];
      const world = drive({ model, settings: STATES[state], changes });
      const points = await solveNetlist(netlistOf(world, patch, { red, black, ohms: INPUT_OHMS }));
      const judge = (points.get(red) ?? Number.NaN) - (points.get(black) ?? Number.NaN);
      expect(Math.abs((readMeter(world, 'volts-dc', red, black).value ?? Number.NaN) - judge)).toBeLessThan(1e-5);
    },
  );
});

describe('low-impedance volts', () => {
  /** With the load of the function in the network, as leads lay it there. */
  const low = (world: World, red: string, black: string) => {
    world.setChanges([...world.changes, ...meterLoad('volts-lo', red, black)]);
    return readMeter(world, 'volts-lo', red, black);
  };
  const leak = ohm('leak', 'PS.+', 'PS.m', 1e6);

  it('takes a ghost voltage away that 10 Mohm shows: 12.6 V behind 1 Mohm (values 8.1 and arithmetic)', () => {
    expect(readMeter(bench(12.6, leak), 'volts-dc', 'PS.m', 'PS.-').text).toBe('11.45');
    // 3 kohm: common practice, no source.
    expect(low(bench(12.6, leak), 'PS.m', 'PS.-').text).toBe('0.038');
  });

  it('leaves a feed that carries something as it is: 0.5 ohm takes 2 mV of 12.6 V (arithmetic)', () => {
    expect(low(bench(12.6, ohm('wire', 'PS.+', 'PS.m', 0.5)), 'PS.m', 'PS.-').value).toBeCloseTo(12.598, 3);
  });

  it('does not tell a corroded pin from a good one: 60 ohm take a quarter of a volt, a lamp most (arithmetic)', () => {
    expect(low(bench(12.6, ohm('pin', 'PS.+', 'PS.m', 60)), 'PS.m', 'PS.-').value).toBeCloseTo(12.353, 3);
  });

  it('as in ngspice with it in the netlist', async () => {
    const model = hobbinModel();
    const { changes } = handsOf(model, 'pull K1');
    const world = drive({ model, settings: STATES.crank, changes: [...patchChanges('open X:X1.2'), ...changes] });
    const points = await solveNetlist(netlistOf(world, 'low', { red: 'K1.86', black: 'GND1.L', ohms: LOW_OHMS }));
    const judge = points.get('K1.86') ?? Number.NaN;
    const ground = points.get('GND1.L') ?? Number.NaN;
    const shown = low(world, 'K1.86', 'GND1.L').value ?? Number.NaN;
    expect(Math.abs(shown - (judge - ground))).toBeLessThan(1e-5);
  });
});

describe('diode test', () => {
  const volts = (...resistors: ElementSpec[]) => readMeter(bench(0, ...resistors), 'diode', 'PS.+', 'PS.-');

  it('sends 1 mA, no less than vehicle service asks for: 560 ohm stand at 0.56 V (meter requirement of a maker)', () => {
    expect(DIODE_AMPS).toBeGreaterThanOrEqual(1e-3);
    expect(DIODE_AMPS).toBeLessThanOrEqual(1.5e-3);
    expect(volts(ohm('r', 'PS.+', 'PS.-', 560))).toMatchObject({ text: '0.560', unit: 'V' });
  });

  it('shows 0 to 3 V and overload above, or with nothing between its leads (meter requirement of a maker)', () => {
    expect(volts(ohm('r', 'PS.+', 'PS.-', 2990)).text).toBe('2.990');
    expect(volts(ohm('r', 'PS.+', 'PS.-', 3010)).text).toBe('OL');
    expect(volts(ohm('r', 'PS.+', 'PS.m', 1)).text).toBe('OL');
  });

  it('is overload and live on a battery', () => {
    const world = drive({ model: hobbinModel(), settings: STATES.run });
    expect(readMeter(world, 'diode', 'G1.+', 'G1.-')).toMatchObject({ text: 'OL', live: true });
    expect(readMeter(world, 'diode', 'G1.-', 'G1.+').text).toBe('OL');
  });
});

describe('ohms', () => {
  it.each([0.12, 1, 79.5, 560, 4700, 820e3, 10e6])('a resistor of %d ohm reads as it is', (ohms) => {
    const value = readMeter(bench(0, ohm('r', 'PS.+', 'PS.-', ohms)), 'ohms', 'PS.+', 'PS.-').value ?? Number.NaN;
    // The leaks that keep islands in place lie beside it.
    expect(Math.abs(value / ohms - 1)).toBeLessThan(1e-4);
  });

  it('reads OL on an open circuit, and the parallel paths of a part that is not isolated (KUP ch 8)', () => {
    const part = ohm('r', 'PS.+', 'PS.m', 100);
    expect(readMeter(bench(0, part), 'ohms', 'PS.+', 'PS.-').text).toBe('OL');
    const beside = [ohm('p', 'PS.m', 'PS.-', 50), ohm('q', 'PS.+', 'PS.-', 50)];
    expect(readMeter(bench(0, part, ...beside), 'ohms', 'PS.+', 'PS.m').value).toBeCloseTo(50, 2);
  });

  it('takes the leads with it: shorted it shows theirs, to be subtracted (service manuals: 0.5 ohm or less)', () => {
    const world = bench(0, ohm('r', 'PS.+', 'PS.-', 1));
    expect(readMeter(world, 'ohms', 'PS.-', 'PS.-', { leadOhms: 0.2 }).value).toBeCloseTo(0.2, 6);
    expect(readMeter(world, 'ohms', 'PS.+', 'PS.-', { leadOhms: 0.2 }).value).toBeCloseTo(1.2, 6);
  });

  it('says that a circuit is live, and that a dead one is not', () => {
    const world = drive({ model: hobbinModel(), settings: STATES.run });
    expect(readMeter(world, 'ohms', 'K3.86', 'K3.85').live).toBe(true);
    const dead = drive({ model: hobbinModel(), settings: STATES.isolated });
    expect(readMeter(dead, 'ohms', 'K3.86', 'K3.85').live).toBeUndefined();
  });

  it.each([12.6, 2, 0.6])(
    'is overload with %d V from elsewhere, whichever way round (common practice, no source)',
    (volts) => {
      const live = bench(volts, ohm('r', 'PS.+', 'PS.m', 100), ohm('q', 'PS.m', 'PS.-', 1e-3));
      for (const fn of ['ohms', 'continuity'] as const) {
        for (const [red, black] of [
          ['PS.+', 'PS.-'],
          ['PS.-', 'PS.+'],
        ]) {
          const reading = readMeter(live, fn, red, black);
          expect(reading).toMatchObject({ value: null, text: 'OL', live: true });
          expect(reading.beep ?? false).toBe(false);
        }
      }
    },
  );

  it('is wrong by a little voltage from elsewhere, and never less than nothing by what counts as live (KUP ch 8)', () => {
    const strap = (volts: number) => bench(volts, ohm('r', 'PS.+', 'PS.m', 1e-3), ohm('q', 'PS.m', 'PS.-', 50));
    expect(readMeter(strap(0.2), 'ohms', 'PS.m', 'PS.-').value).toBeGreaterThan(150);
    expect(readMeter(strap(0.2), 'ohms', 'PS.-', 'PS.m')).toMatchObject({ text: 'OL', live: true });
    expect(readMeter(strap(1e-4), 'ohms', 'PS.-', 'PS.m').live).toBeUndefined();
  });

  // Reference values 8.1: 400 ohm 0.5 to 1 mA, 4 k 100 uA, 40 k 10 uA, 4 M 0.5 uA (hand meter datasheets, from memory).
  it.each([
    [0, 1e-3],
    [1000, 100e-6],
    [10e3, 10e-6],
    [3e6, 0.5e-6],
  ])('into %d ohm it sends no more than its range has, and no less than half of that: %d A', (ohms, amps) => {
    // What little stands there from elsewhere is divided by the test current.
    const outside = 1e-3;
    const part = ohm('r', 'PS.+', 'PS.m', Math.max(ohms, 1e-6));
    const off = readMeter(bench(outside, part), 'ohms', 'PS.m', 'PS.-').value ?? Number.NaN;
    expect(outside / (off - ohms)).toBeLessThan(1.02 * amps);
    expect(outside / (off - ohms)).toBeGreaterThan(0.5 * amps);
  });

  it('stands at no more than 3.2 V with its leads open (low-cost meter manuals)', () => {
    expect(TEST_VOLTS).toBeLessThanOrEqual(3.2);
  });

  it.each([
    [599, '599.0', 'Ω'],
    [601, '0.601', 'kΩ'],
    [7e3, '7.00', 'kΩ'],
    [61e6, 'OL', 'MΩ'],
  ])('%d ohm takes the range of a 6000-count meter: %s %s', (ohms, text, unit) => {
    expect(readMeter(bench(0, ohm('r', 'PS.+', 'PS.-', ohms)), 'ohms', 'PS.+', 'PS.-')).toMatchObject({ text, unit });
  });

  it('continuity stays in its lowest range: 700 ohm is overload there (common practice, no source)', () => {
    const world = bench(0, ohm('r', 'PS.+', 'PS.-', 700));
    expect(readMeter(world, 'continuity', 'PS.+', 'PS.-')).toMatchObject({ text: 'OL', unit: 'Ω', beep: false });
    expect(readMeter(world, 'ohms', 'PS.+', 'PS.-').text).toBe('0.700');
  });

  it('beeps on continuity below 50 ohm and not above (meter manual)', () => {
    const beep = (ohms: number) =>
      readMeter(bench(0, ohm('r', 'PS.+', 'PS.-', ohms)), 'continuity', 'PS.+', 'PS.-').beep;
    expect([beep(1), beep(49), beep(51)]).toEqual([true, true, false]);
  });

  it('60 ohm between the CAN lines with the battery off, 120 with one terminator lost (ISO 11898-2, cable makers)', () => {
    const model = hobbinModel();
    const lines = (patch: string) =>
      readMeter(drive({ model, settings: STATES.isolated, changes: patchChanges(patch) }), 'ohms', 'J2.C', 'J2.D')
        .value ?? 0;
    expect(Math.abs(lines('set canok 1') - 60)).toBeLessThan(3);
    expect(Math.abs(lines('elem R2.term open') - 120)).toBeLessThan(6);
  });

  it('cold filaments: a 55 W lamp reads a small part of its hot ohms (CP2e §20.4: 34 A cold against 2.5 A hot)', () => {
    const model = hobbinModel();
    const lamp = model.elements.find((e) => e.id === 'E1.fil56');
    const hot = lamp?.law.kind === 'resistance' ? lamp.law.ohms : Number.NaN;
    const world = drive({ model, settings: STATES.isolated, changes: handsOf(model, 'unplug X21').changes });
    const cold = readMeter(world, 'ohms', 'E1.56', 'E1.31').value ?? Number.NaN;
    expect(hot / cold).toBeGreaterThan(8);
    expect(hot / cold).toBeLessThan(14);
  });
});

describe('amps', () => {
  it('is a shunt in the circuit: its burden lowers what it measures (KUP ch 8, "Ammeter impact")', () => {
    const world = bench(2, ohm('r', 'PS.m', 'PS.-', 1.5));
    world.setChanges(meterLoad('amps', 'PS.+', 'PS.m'));
    const amps = readMeter(world, 'amps', 'PS.+', 'PS.m').value ?? Number.NaN;
    // 30 to 40 mV/A in the 10 A jack (hand meter datasheets, from memory).
    expect(amps).toBeCloseTo(2 / (1.5 + 0.035 + 0.001), 4);
    expect(world.voltsBetween('PS.+', 'PS.m') / amps).toBeGreaterThan(0.03);
    expect(world.voltsBetween('PS.+', 'PS.m') / amps).toBeLessThan(0.04);
  });

  it('across a battery is a short: hundreds of amperes for its fuse', () => {
    const world = drive({ model: hobbinModel(), settings: STATES.off, changes: meterLoad('amps', 'G1.+', 'G1.-') });
    expect(world.voltsBetween('G1.+', 'G1.-') / 0.035).toBeGreaterThan(200);
  });
});

describe('a range that is kept', () => {
  const post = (range: number | null) =>
    readMeter(bench(12.654, ohm('r', 'PS.+', 'PS.-', 1e3)), 'volts-dc', 'PS.+', 'PS.-', { range });

  it('shows its own decimals, and overload where the value is too much for it (6000 counts, 8.1)', () => {
    expect(rangesOf('volts-dc')).toEqual(['6 V', '60 V', '600 V']);
    expect([null, 1, 2].map((range) => post(range).text)).toEqual(['12.65', '12.65', '12.7']);
    expect(post(0)).toMatchObject({ value: null, text: 'OL', unit: 'V' });
  });

  it('on ohms sends its own current: 100 ohm in the 6 kohm range is 0.100, 10 kohm overload', () => {
    const at = (ohms: number) =>
      readMeter(bench(0, ohm('r', 'PS.+', 'PS.-', ohms)), 'ohms', 'PS.+', 'PS.-', {
        range: rangesOf('ohms').indexOf('6 kΩ'),
      });
    expect(at(100)).toMatchObject({ text: '0.100', unit: 'kΩ' });
    expect(at(10e3)).toMatchObject({ value: null, text: 'OL', unit: 'kΩ' });
  });

  it('is there only where a hand meter has more than one', () => {
    expect(rangesOf('continuity')).toEqual([]);
    expect(rangesOf('diode')).toEqual([]);
    expect(rangesOf('ohms')).toHaveLength(6);
  });
});

describe('zero', () => {
  it('takes the leads off: shorted, then subtracted (service manuals: 0.5 ohm or less)', () => {
    const world = bench(0, ohm('r', 'PS.+', 'PS.-', 1));
    const leads = { leadOhms: LEAD_OHMS };
    expect(LEAD_OHMS).toBeGreaterThanOrEqual(0.1);
    expect(LEAD_OHMS).toBeLessThanOrEqual(0.5);
    const short = readMeter(world, 'ohms', 'PS.-', 'PS.-', leads);
    expect(short.text).toBe('0.2');
    expect(readMeter(world, 'ohms', 'PS.-', 'PS.-', { ...leads, zero: short.value }).text).toBe('0.0');
    expect(readMeter(world, 'ohms', 'PS.+', 'PS.-', { ...leads, zero: short.value }).text).toBe('1.0');
  });

  it('leaves what is at the jacks, its range and its overload as they are', () => {
    const world = bench(12.6, ohm('r', 'PS.+', 'PS.-', 1e3));
    const less = readMeter(world, 'volts-dc', 'PS.+', 'PS.-', { zero: 12.4 });
    expect(less.text).toBe('0.20');
    expect(less.value).toBeCloseTo(12.6, 4);
  });
});

describe('display of a 6000-count meter', () => {
  it.each([
    [12.654, '12.65'],
    [5.9994, '5.999'],
    [5.9996, '6.000'],
    [-0.0004, '0.000'],
    [0.0186, '0.019'],
    [60.4, '60.4'],
  ])('%d V is %s', (volts, text) => {
    expect(show('volts', volts).text).toBe(text);
  });

  it.each([
    [0.04, '0.0', 'Ω'],
    [79.48, '79.5', 'Ω'],
    [2500, '2.500', 'kΩ'],
    [47e3, '47.00', 'kΩ'],
    [10e6, '10.00', 'MΩ'],
  ])('%d ohm is %s %s', (ohms, text, unit) => {
    expect(show('ohms', ohms)).toEqual({ text, unit });
  });

  it('never shows further from the value than half a count, whatever is read', () => {
    for (let k = -12_000; k < 12_000; k += 7) {
      const volts = k / 1000 + 1e-4;
      expect(Math.abs(Number(show('volts', volts).text) - volts)).toBeLessThanOrEqual(
        Math.abs(volts) < 6 ? 0.000501 : 0.00501,
      );
    }
  });

  it('is good to 0.5 % and 2 counts on volts, 1 % and 3 counts on the others (typical hand meter, from memory)', () => {
    expect(accuracy('volts', 12)).toBeCloseTo(0.06 + 0.02, 9);
    expect(accuracy('ohms', 100)).toBeCloseTo(1 + 0.3, 9);
  });
});

/** The cluster against the book: which lamp is lit by what, what stands on the code line, where the needles point. */
import { describe, expect, test } from 'vitest';
import { type ClusterDisplay, displayOf, noticed, Rig, tellTales } from '../../src/job/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { STATES } from '../support/states.ts';
import { theJob, work, workedAt } from './at-work.ts';

const model = hobbinModel();
const open = (element: string): Change => ({ kind: 'series', element, ohms: null });

type Seeable = Parameters<typeof noticed>[0];
const seen = (world: Seeable): string[] => noticed(world, 'CDASH');
const lit = (world: Seeable): string[] => tellTales(model, seen(world)).flatMap((lamp) => (lamp.lit ? [lamp.id] : []));
const shown = (world: Seeable): ClusterDisplay | null => displayOf(world, seen(world));
const inState = (settings: string, changes: Change[] = []) => drive({ model, settings, changes });

describe('lamps', () => {
  // Common practice, no source: with the key on and the engine stopped there is no pressure, and the lamp says so.
  test('key on: charge, park brake and oil pressure; nothing else, since the book has no lamp check', () => {
    expect(lit(inState('key=run'))).toEqual(['CHG', 'PBL', 'OIL']);
  });

  test('oil pressure: out with its switch open, and once the engine runs', () => {
    expect(lit(inState('key=run', [{ kind: 'ohms', element: 'B2.sw', ohms: 1e9 }]))).not.toContain('OIL');
    expect(lit(inState(STATES.idle))).not.toContain('OIL');
  });

  test('key off: none, though the hazard lamps light their tell-tales without the key', () => {
    expect(lit(inState(''))).toEqual([]);
    const hazard = inState('hazard=1');
    expect(shown(hazard)).toBeNull();
    // Whenever one looks: an eye waits for the next flash.
    for (let i = 0; i < 8; i++) {
      hazard.advance(90);
      expect(lit(hazard)).toEqual(['TTL', 'TTR']);
    }
  });

  test('park brake: hard-wired to its switch, and out with the lamp broken though the brake is on', () => {
    expect(lit(inState('key=run pbrake=0'))).not.toContain('PBL');
    expect(lit(inState('key=run', [open('A2.pblamp')]))).not.toContain('PBL');
    // The wire toward A1 broken: the lamp lights all the same (book, park brake).
    expect(lit(inState('key=run', [open('X:X1.7')]))).toContain('PBL');
  });

  test('charge: out with the engine running, back on with the alternator fuse open, dark with its wire broken', () => {
    expect(lit(inState(STATES.idle))).not.toContain('CHG');
    expect(lit(inState('key=run', [open('W:302B')]))).not.toContain('CHG');
  });

  test('turn: one side flashes, and not with its wire to the cluster broken', () => {
    expect(lit(inState('key=run turn=L'))).toEqual(['CHG', 'PBL', 'OIL', 'TTL']);
    expect(lit(inState('key=run turn=R'))).toEqual(['CHG', 'PBL', 'OIL', 'TTR']);
    expect(lit(inState('key=run turn=L', [open('W:614C')]))).not.toContain('TTL');
  });

  test('panel lighting with the lights', () => {
    expect(lit(inState('key=run lights=head'))).toContain('ILL');
  });

  test('oil pressure: by network 5 s after it is low above 700 rpm, as for a switch that is stuck closed', () => {
    const stuck: Change = { kind: 'closed', element: 'B2.sw' };
    const idle = inState(STATES.idle, [stuck]);
    expect(lit(idle)).not.toContain('OIL');
    idle.advance(3000);
    expect(lit(idle)).toContain('OIL');
    expect(shown(idle)?.codes).toEqual(['P09']);
    const sound = inState(STATES.idle);
    sound.advance(10_000);
    expect(lit(sound)).not.toContain('OIL');
  });

  test('air filter: by network from A3, clean with the wire open', () => {
    expect(lit(inState('key=run filter=blocked'))).toContain('FLT');
    expect(lit(inState('key=run filter=blocked', [open('B7.sw')]))).not.toContain('FLT');
    expect(lit(inState('key=run filter=blocked', [open('W:901I')]))).not.toContain('FLT');
  });
});

describe('code line', () => {
  test('a sound machine has none, standing and running', () => {
    expect(shown(inState('key=run'))?.codes).toEqual([]);
    expect(shown(inState(STATES.idle))?.codes).toEqual([]);
  });

  test('A1 without its keep-alive is lost to both others, and its speed and temperature with it', () => {
    const display = shown(inState('key=run', [open('F34.link')]));
    expect(display).toMatchObject({ codes: ['C11', 'H10'], rpm: null });
    expect(Object.keys(display?.needles ?? {})).toEqual(['fuel']);
  });

  test('a code of A3 does not come through where the cluster has lost A3', () => {
    const codes = shown(inState('key=run', [open('X:X4.14'), open('X:X4.15'), open('F34.link')]))?.codes;
    expect(codes).toContain('C11');
    expect(shown(inState('key=run', [open('F12.link')]))?.codes).toEqual(['C13']);
  });

  test('a refused start stands there while it is asked for, and is kept when the key is let go', () => {
    const rig = Rig.arriving(
      model,
      [{ at: 'X:X1.7', mode: 'open', changes: [open('X:X1.7')], cures: [] }],
      theJob('job-05').arrival,
    );
    rig.run([{ control: 'key', value: 'run' }, { pass: 2000 }, { control: 'key', value: 'start' }, { pass: 4900 }]);
    expect(shown(rig.world)?.codes).toEqual([]);
    rig.run([{ pass: 200 }]);
    expect(shown(rig.world)?.codes).toEqual(['P12']);
    rig.run([{ control: 'key', value: 'run' }, { pass: 500 }]);
    expect(shown(rig.world)?.codes).toEqual([]);
    expect(rig.world.stateOf('P12')).toBe('stored');
  });

  test('what stands there is noticed by whoever is in front of it, and by nobody outside', () => {
    const world = inState('key=run', [open('B1.ntc')]);
    expect(noticed(world, 'CDASH')).toContain('shows:P07');
    expect(noticed(world, 'ENGL')).not.toContain('shows:P07');
  });

  test('a look at the dash reads it', () => {
    const attempt = workedAt('job-05', 'walk CFUSE; open AC1; pull F12; walk CDASH; operate key run');
    expect(work(attempt, 'look CDASH').seen.codes).toContain('shows:C13');
  });
});

describe('needles', () => {
  const fuel = (settings: string, changes: Change[] = []) => shown(inState(settings, changes))?.needles.fuel;

  test('fuel by the sender on the cluster’s 5 V: 10 ohm full, 90 half, 180 empty (book, sensors)', () => {
    expect(fuel('key=run level=10')).toBeCloseTo(1, 1);
    expect(fuel('key=run level=90')).toBeCloseTo(0.5, 1);
    expect(fuel('key=run level=180')).toBeCloseTo(0, 1);
  });

  test('rests with the sender open, and reads low with a resistance in its wire', () => {
    expect(fuel('key=run', [open('W:520A')])).toBeUndefined();
    expect(shown(inState('key=run', [open('W:520A')]))?.codes).toEqual(['C20']);
    expect(fuel('key=run level=90', [{ kind: 'series', element: 'W:520A', ohms: 60 }])).toBeLessThan(0.25);
  });

  test('coolant rises with warmth: 2.5 kohm at 20 °C, 320 ohm at 80 °C', () => {
    const at = (ohms: number) => shown(inState(`key=run ntcB1=${ohms}`))?.needles.coolant;
    expect(at(2500)).toBeCloseTo(0.1, 1);
    expect(at(320)).toBeCloseTo(0.5, 1);
  });

  test('speed is that of the crankshaft in tens, and nought with its sensor open', () => {
    expect(shown(inState(STATES.idle))?.rpm).toBe(850);
    const cranking = inState('key=start', [open('B3.coil')]);
    expect(cranking.quantityOf('rpm')).toBeGreaterThan(200);
    expect(shown(cranking)?.rpm).toBe(0);
  });
});

import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { createActor } from 'xstate';
import { chartKey, chartOf, chartValue, LiveMachine, restingState, World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { changesOf, type Move, makeMove, movesOf } from '../support/moves.ts';

const model = hobbinModel();
const release = process.env.OHMYARD_RELEASE !== undefined;

/** Every bit of a machine's volts, quantities and progress, and where its regions and controls stand. */
function bits(world: World): string {
  const { timeMs, quantities, progress, regions, controls } = world.state;
  const words = [world.electrics.network.volts, quantities, progress].map((list) =>
    hash(new Uint32Array(list.slice().buffer)),
  );
  return [timeMs, ...words, regions.join(','), controls.join(',')].join(' ');
}

/** FNV-1a over 32-bit words. */
function hash(words: Uint32Array): number {
  let sum = 0x811c9dc5;
  for (const word of words) sum = Math.imul(sum ^ word, 0x01000193) >>> 0;
  return sum;
}

const started: LiveMachine[] = [];
function live(changes: readonly Change[] = []): LiveMachine {
  return keep(new LiveMachine(model, changes));
}
function keep(machine: LiveMachine): LiveMachine {
  started.push(machine);
  return machine;
}
afterEach(() => {
  for (const machine of started.splice(0)) machine.stop();
});

/** Plays the moves on the kernel and the chart, which is stopped and made anew from the kernel's state at `renewAt`. */
function agree(changes: readonly Change[], moves: readonly Move[], renewAt = -1): void {
  const kernel = new World(model, changes);
  let machine = live(changes);
  moves.forEach((move, i) => {
    const traces: [string[], string[]] = [[], []];
    makeMove(kernel, move, (world) => traces[0].push(bits(world)));
    makeMove(machine, move, (world) => traces[1].push(bits(world)));
    const where = `move ${i}: ${JSON.stringify(move)}`;
    expect(machine.actor.getSnapshot().value, where).toEqual(chartValue(model, kernel.state));
    expect(traces[1], where).toEqual(traces[0]);
    expect(bits(machine), where).toBe(bits(kernel));
    expect(machine.actor.getSnapshot().context.timeMs, where).toBe(kernel.state.timeMs);
    if (i === renewAt) {
      machine.stop();
      machine = keep(LiveMachine.of(kernel));
    }
  });
  machine.stop();
}

const start: Move[] = [
  { kind: 'control', control: 'key', value: 'run', holdMs: 2500 },
  { kind: 'control', control: 'key', value: 'start', holdMs: 2000 },
  { kind: 'control', control: 'key', value: 'run', holdMs: 3000 },
  { kind: 'control', control: 'turn', value: 'L', holdMs: 1500 },
  { kind: 'control', control: 'key', value: 'off', holdMs: 4000 },
];

describe('kernel and chart agree, bit for bit', () => {
  test('when the engine is started and stopped', () => agree([], start));

  test.each([
    ['K3', 'off'],
    ['A1.CE', 'off'],
    ['A1.MR', 'on'],
    ['K13', 'off'],
  ])('when %s is stuck in %s', (region, state) => {
    agree([{ kind: 'stuck', region, state }], [...start, { kind: 'changes', changes: [], holdMs: 500 }, ...start]);
  });

  const property = (faults: fc.Arbitrary<Change[]>, numRuns: number) =>
    fc.assert(
      fc.property(faults, movesOf(model, release ? 16 : 8), fc.nat(8), (changes, moves, renewAt) =>
        agree(changes, moves, renewAt),
      ),
      { numRuns },
    );

  test('on random controls and holds of a sound machine', () => property(fc.constant([]), release ? 200 : 15), 600_000);

  test('on random controls and holds with faults', () => {
    const faults = fc.array(changesOf(model), { minLength: 1, maxLength: 3 }).map((lists) => lists.flat());
    property(faults, release ? 400 : 15);
  }, 600_000);
});

describe('the chart', () => {
  const chart = chartOf(model);

  test('has one region for each control and each region of the tables', () => {
    expect(Object.keys(chart.root.states)).toEqual(['clock', 'controls', 'regions']);
    const { controls, regions } = chart.root.states;
    expect(controls.type).toBe('parallel');
    expect(regions.type).toBe('parallel');
    expect(Object.keys(controls.states)).toEqual(model.book.controls.map((c) => chartKey(c.id)));
    expect(Object.keys(regions.states)).toEqual(model.regions.map((r) => chartKey(r.id)));
    for (const c of model.book.controls) {
      const values = Object.keys(controls.states[chartKey(c.id)].states);
      expect(values.sort(), c.id).toEqual(c.values.map(chartKey).sort());
    }
    for (const r of model.regions) {
      const states = regions.states[chartKey(r.id)].states;
      expect(Object.keys(states).sort(), r.id).toEqual(r.states.map(chartKey).sort());
      const transitions = Object.values(states).flatMap((state) => [...state.transitions.values()].flat());
      expect(transitions.length, r.id).toBe(r.transitions.length);
    }
  });

  test('starts from its input where the book says', () => {
    const actor = createActor(chart, { input: restingState(model) }).start();
    expect(actor.getSnapshot().value).toEqual(chartValue(model, restingState(model)));
    actor.stop();
  });

  test('is left as it is by an event that it does not know', () => {
    const machine = live();
    machine.setControl('key', 'run');
    const before = machine.actor.getSnapshot();
    for (const text of ['{"type":"EXPLODE"}', '{"type":"CONTROL","control":"key","value":"sideways"}']) {
      machine.actor.send(JSON.parse(text));
    }
    expect(machine.actor.getSnapshot()).toBe(before);
  });

  test('tells a subscriber of every change of a region', () => {
    const machine = live();
    const seen: string[] = [];
    machine.actor.subscribe(({ value }) => seen.push(value.regions.K3));
    machine.setControl('key', 'run');
    machine.advance(1000);
    expect(seen[0]).toBe('off');
    expect(seen.at(-1)).toBe('on');
  });

  test('says so when a guard throws, and the machine does not go on', () => {
    const machine = live();
    // Not the clock's own call: the guard is asked inside the actor.
    machine.ohms = machine.volts = () => {
      throw new Error('no network');
    };
    machine.amps = () => {
      throw new Error('no network');
    };
    expect(() => machine.scan([])).toThrow('no network');
  });
});

describe('a machine made live', () => {
  test('goes on in the middle of a delay as the kernel does', () => {
    const kernel = new World(model);
    kernel.setControl('key', 'run');
    // A1's main relay output pulls in after 300 ms: 150 ms of it are over.
    kernel.advance(150);
    expect(kernel.stateOf('A1.MR')).toBe('off');
    const machine = keep(LiveMachine.of(kernel));
    machine.advance(149);
    expect(machine.stateOf('A1.MR')).toBe('off');
    machine.advance(1);
    expect(machine.stateOf('A1.MR')).toBe('on');
    kernel.advance(149);
    kernel.advance(1);
    expect(bits(machine)).toBe(bits(kernel));
  });

  test('leaves the state that it was made from alone', () => {
    const kernel = new World(model);
    kernel.setControl('key', 'run');
    const before = bits(kernel);
    const machine = keep(LiveMachine.of(kernel));
    for (const move of start) makeMove(machine, move);
    expect(bits(kernel)).toBe(before);
  });

  test('refuses a position that a control does not have', () => {
    expect(() => live().setControl('key', 'sideways')).toThrow(RangeError);
  });

  test('settles a key turn in under 60 ms', () => {
    const costs: number[] = [];
    for (let i = 0; i < 5; i++) {
      const machine = live();
      machine.setControl('key', 'run');
      machine.advance(2500);
      const before = performance.now();
      machine.setControl('key', 'start');
      machine.advance(500);
      costs.push(performance.now() - before);
    }
    expect(Math.min(...costs)).toBeLessThan(60);
  });
});

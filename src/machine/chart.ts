/**
 * The statechart of a machine's electrical state, generated from the part tables that the kernel reads. Parallel
 * regions: the clock, one for each control, one for each region of the book (relays, fuses, starter, engine, outputs,
 * timers, codes). No guard is written here: what a transition waits for is its table's compiled guard, and how long is
 * its progress in context, which PASS events drive.
 */
import { assign, setup } from 'xstate';
import { once } from '../circuit/index.ts';
import type { RegionSpec } from '../parts/index.ts';
import type { ControlSpec } from './book.ts';
import { chartKey } from './chart-value.ts';
import type { View } from './guard.ts';
import type { Model } from './model.ts';
import type { MachineState } from './state.ts';
import { DUE, type Transition, tableOf, transitionsOf } from './table.ts';

/** Never changed in place. Not meant for JSON: an attempt is kept as its log. */
export interface ChartContext {
  timeMs: number;
  progress: Float64Array;
  quantities: Float64Array;
  /** State in which a region is held by a fault, by region. */
  stuck: Readonly<Record<string, string>>;
}

/** A machine that rests in the book's initial states. */
export type ChartInput = Pick<MachineState, 'timeMs' | 'quantities'>;

/** A view is of the network's solution for the state in which the event finds the chart. */
export type ChartEvent =
  | { type: 'CONTROL'; control: string; value: string }
  | { type: 'QUANTITY'; quantity: string; value: number }
  | { type: 'SET'; region: string; state: string }
  | { type: 'STICK'; stuck: Readonly<Record<string, string>> }
  /** Everything without a delay whose guard holds happens. */
  | { type: 'SCAN'; view: View }
  /** Time has gone on: progress and quantities at its end. Everything that has waited for its delay happens. */
  | { type: 'PASS'; ms: number; view: View; progress: Float64Array; quantities: Float64Array };

/** The chart's words: what its events may ask and its actions do, for the tables of one model. */
function wordsOf(model: Model) {
  const table = tableOf(model);
  const transitions = transitionsOf(model);
  const free = (context: ChartContext, region: number) => !Object.hasOwn(context.stuck, model.regions[region].id);

  return setup({
    types: {} as { context: ChartContext; events: ChartEvent; input: ChartInput },
    guards: {
      isTurned: ({ event }, params: { control: string; value: string }) =>
        event.type === 'CONTROL' && event.control === params.control && event.value === params.value,
      isSet: ({ event }, params: { region: string; state: string }) =>
        event.type === 'SET' && event.region === params.region && event.state === params.state,
      isStuck: ({ event }, params: { region: string; state: string }) =>
        event.type === 'STICK' && event.stuck[params.region] === params.state,
      holds: ({ context, event }, params: { transition: number }) => {
        const t = transitions[params.transition];
        return event.type === 'SCAN' && free(context, t.region) && t.test(event.view);
      },
      isRipe: ({ context, event }, params: { transition: number }) => {
        const t = transitions[params.transition];
        return event.type === 'PASS' && free(context, t.region) && event.progress[t.index] >= DUE && t.test(event.view);
      },
    },
    actions: {
      pass: assign(({ context, event }) => {
        if (event.type !== 'PASS') return {};
        return { timeMs: context.timeMs + event.ms, progress: event.progress, quantities: event.quantities };
      }),
      /** A region that has moved waits anew for everything. */
      restart: assign(({ context }, params: { region: number }) => {
        const progress = context.progress.slice();
        for (const list of table[params.region]) for (const t of list) progress[t.index] = 0;
        return { progress };
      }),
      put: assign(({ context, event }) => {
        const index = event.type === 'QUANTITY' ? model.quantityIndex.get(event.quantity) : undefined;
        if (event.type !== 'QUANTITY' || index === undefined) return {};
        const quantities = context.quantities.slice();
        quantities[index] = event.value;
        return { quantities };
      }),
      stick: assign(({ event }) => (event.type === 'STICK' ? { stuck: event.stuck } : {})),
    },
  });
}

type Words = ReturnType<typeof wordsOf>;

function controlStates(words: Words, control: ControlSpec) {
  return words.createStateConfig({
    initial: chartKey(control.initial),
    states: Object.fromEntries(control.values.map((value) => [chartKey(value), {}])),
    on: {
      CONTROL: control.values.map((value) => ({
        target: `.${chartKey(value)}`,
        guard: { type: 'isTurned' as const, params: { control: control.id, value } },
      })),
    },
  });
}

function regionStates(words: Words, region: RegionSpec, byState: readonly (readonly Transition[])[]) {
  const edges = (list: readonly Transition[], guard: 'holds' | 'isRipe') =>
    list.map((t) => ({
      target: chartKey(region.states[t.to]),
      guard: { type: guard, params: { transition: t.index } },
      actions: { type: 'restart' as const, params: { region: t.region } },
    }));
  const putInto = (guard: 'isSet' | 'isStuck') =>
    region.states.map((state) => ({
      target: `.${chartKey(state)}`,
      guard: { type: guard, params: { region: region.id, state } },
    }));
  const stateOn = (list: readonly Transition[]) => ({
    SCAN: edges(
      list.filter((t) => t.delayMs === 0),
      'holds',
    ),
    PASS: edges(
      list.filter((t) => t.delayMs > 0),
      'isRipe',
    ),
  });
  return words.createStateConfig({
    initial: chartKey(region.initial),
    states: Object.fromEntries(region.states.map((state, s) => [chartKey(state), { on: stateOn(byState[s]) }])),
    on: { SET: putInto('isSet'), STICK: putInto('isStuck') },
  });
}

function drawChart(model: Model) {
  const words = wordsOf(model);
  const table = tableOf(model);
  const clock = words.createStateConfig({
    initial: 'running',
    states: {
      running: { on: { PASS: { actions: 'pass' }, QUANTITY: { actions: 'put' }, STICK: { actions: 'stick' } } },
    },
  });
  return words.createMachine({
    id: 'machine',
    context: ({ input }) => ({
      timeMs: input.timeMs,
      progress: new Float64Array(transitionsOf(model).length),
      quantities: input.quantities.slice(),
      stuck: {},
    }),
    type: 'parallel',
    states: {
      // First, so that a PASS counts the progress before a region that it moves starts over.
      clock,
      controls: {
        type: 'parallel',
        states: Object.fromEntries(model.book.controls.map((c) => [chartKey(c.id), controlStates(words, c)])),
      },
      regions: {
        type: 'parallel',
        states: Object.fromEntries(model.regions.map((r, i) => [chartKey(r.id), regionStates(words, r, table[i])])),
      },
    },
  });
}

export type Chart = ReturnType<typeof drawChart>;

export const chartOf: (model: Model) => Chart = once(drawChart);

/** The machine that a student works on: the same clock and network as any `World`, its state kept by the statechart. */
import { type ActorRefFrom, createActor, type SnapshotFrom } from 'xstate';
import type { Change } from '../parts/index.ts';
import { type Chart, type ChartEvent, chartKey, chartOf, chartValue } from './chart.ts';
import type { View } from './guard.ts';
import type { Keeper, Stretch } from './keeper.ts';
import type { Model } from './model.ts';
import { copyState, type MachineState, restingState } from './state.ts';
import type { Transition } from './table.ts';
import { World } from './world.ts';

export type ChartActor = ActorRefFrom<Chart>;
export type ChartSnapshot = SnapshotFrom<Chart>;

/** What `World` decides goes to the actor as an event; what state the machine is in then, the actor says. */
class ChartKeeper implements Keeper {
  readonly actor: ChartActor;
  private readonly model: Model;
  private failure: unknown = null;

  constructor(model: Model, state: MachineState) {
    this.model = model;
    const chart = chartOf(model);
    const context = { ...copyState(state), stuck: {} };
    const snapshot = chart.resolveState({ value: chartValue(model, state), context });
    this.actor = createActor(chart, { snapshot, input: context });
    this.actor.subscribe({
      error: (error) => {
        this.failure = error;
      },
    });
    this.actor.start();
  }

  setControl(_state: MachineState, control: number, value: string): MachineState {
    return this.send({ type: 'CONTROL', control: this.model.book.controls[control].id, value });
  }

  setQuantity(_state: MachineState, quantity: number, value: number): MachineState {
    return this.send({ type: 'QUANTITY', quantity: this.model.quantities[quantity], value });
  }

  setRegion(_state: MachineState, region: number, to: number): MachineState {
    const { id, states } = this.model.regions[region];
    return this.send({ type: 'SET', region: id, state: states[to] });
  }

  hold(_state: MachineState, stuck: ReadonlyMap<number, number>): MachineState {
    const { regions } = this.model;
    return this.send({
      type: 'STICK',
      stuck: Object.fromEntries([...stuck].map(([region, to]) => [regions[region].id, regions[region].states[to]])),
    });
  }

  /** Sent only where the tables have something due: with nothing due the event would leave the chart as it is. */
  scan(_state: MachineState, view: View): MachineState {
    return this.send({ type: 'SCAN', view });
  }

  pass(state: MachineState, view: View, stretch: Stretch): MachineState {
    const quantities = state.quantities.slice();
    stretch.turn(quantities);
    return this.send({ type: 'PASS', ms: stretch.ms, view, quantities });
  }

  private send(event: ChartEvent): MachineState {
    this.actor.send(event);
    if (this.failure !== null) throw this.failure;
    return this.read();
  }

  private read(): MachineState {
    const { model } = this;
    const { value, context } = this.actor.getSnapshot();
    return {
      timeMs: context.timeMs,
      progress: context.progress,
      quantities: context.quantities,
      ...
    };
  }
}

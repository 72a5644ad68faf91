/** The machine that a student works on: the same clock and network as any `World`, its state kept by the statechart. */
import { type ActorRefFrom, createActor, type SnapshotFrom } from 'xstate';
import type { Change } from '../parts/index.ts';
import { type Chart, type ChartEvent, chartOf } from './chart.ts';
import { chartValue, ValueReader } from './chart-value.ts';
import type { View } from './guard.ts';
import { elapse, type Keeper, type Stretch } from './keeper.ts';
import type { Model } from './model.ts';
import { copyState, type MachineState, restingState } from './state.ts';
import { World } from './world.ts';

export type ChartActor = ActorRefFrom<Chart>;
/** `value.controls` and `value.regions` say what holds where; `context` has time, progress and quantities. */
export type ChartSnapshot = SnapshotFrom<Chart>;

/** What `World` decides goes to the actor as an event; what state the machine is in then, the actor says. */
class ChartKeeper implements Keeper {
  readonly actor: ChartActor;
  private readonly model: Model;
  private readonly reader: ValueReader;
  private failure: unknown = null;
  /** Time that the actor has not been told of yet. */
  private draft: { view: View; state: MachineState } | null = null;

  constructor(model: Model, state: MachineState) {
    this.model = model;
    this.reader = new ValueReader(model);
    const chart = chartOf(model);
    const { timeMs, progress, quantities } = copyState(state);
    const context = { timeMs, progress, quantities, stuck: {} };
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

  /**
   * Sent only where the tables have something due. The chart asks the same compiled guards on the same view, so that
   * with nothing due it would take no transition; what it takes now, it decides itself.
   */
  scan(_state: MachineState, view: View): MachineState {
    return this.send({ type: 'SCAN', view });
  }

  /**
   * Stretches are added up in a draft until something is ripe or another event comes: until then PASS can move no
   * region, and each event costs about 0.3 ms on a chart this wide.
   */
  pass(state: MachineState, view: View, stretch: Stretch): MachineState {
    if (this.draft === null) {
      const { progress, quantities } = state;
      this.draft = { view, state: { ...state, progress: progress.slice(), quantities: quantities.slice() } };
    }
    const ripe = elapse(this.draft.state, view, stretch);
    return ripe ? this.flush() : this.draft.state;
  }

  flush(): MachineState {
    this.tellTime();
    return this.read();
  }

  private tellTime(): void {
    if (this.draft === null) return;
    const { view, state } = this.draft;
    const { timeMs, progress, quantities } = state;
    this.draft = null;
    this.tell({ type: 'PASS', ms: timeMs - this.actor.getSnapshot().context.timeMs, view, progress, quantities });
  }

  private send(event: ChartEvent): MachineState {
    this.tellTime();
    this.tell(event);
    return this.read();
  }

  private tell(event: ChartEvent): void {
    this.actor.send(event);
    if (this.failure !== null) throw this.failure;
  }

  private read(): MachineState {
    const { value, context } = this.actor.getSnapshot();
    const { timeMs, progress, quantities } = context;
    return { timeMs, progress, quantities, ...this.reader.read(value) };
  }
}

/**
 * A world whose state is an XState actor's. It starts from any state, so that an attempt is replayed by the kernel and
 * then made live. Read it as any world; nothing may write into its `state`.
 */
export class LiveMachine extends World {
  readonly actor: ChartActor;

  constructor(model: Model, changes: readonly Change[] = [], state: MachineState = restingState(model)) {
    const keeper = new ChartKeeper(model, state);
    super(model, changes, state, keeper);
    this.actor = keeper.actor;
  }

  static of(world: World): LiveMachine {
    return new LiveMachine(world.model, world.changes, world.state);
  }

  /** Its subscribers hear nothing more. */
  stop(): void {
    this.actor.stop();
  }
}

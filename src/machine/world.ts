/** One machine with its changes: its network, its clock and its state, kept in plain arrays or by a statechart. */
import type { Change } from '../parts/index.ts';
import { Clockwork } from './clockwork.ts';
import { Electrics } from './electrics.ts';
import type { View } from './guard.ts';
import { ArrayKeeper, type Keeper, type Stretch } from './keeper.ts';
import { type Model, nodeOf } from './model.ts';
import { copyState, type MachineState, restingState } from './state.ts';
import { Stand, type Standing, type Transition } from './table.ts';

/** Seen after every step of simulated time: for captured minima, what lights and what is heard. */
export type Sampler = (world: World) => void;

export class World implements View {
  readonly model: Model;
  readonly electrics: Electrics;
  state: MachineState;
  private changeList: readonly Change[];
  /** Resistances between points, which only a change of conductances can alter. */
  private ohmsSeen = { generation: -1, pairs: new Map<number, number>() };
  private stuck = new Map<number, number>();
  private readonly stand: Stand;
  private readonly clockwork: Clockwork;
  private readonly keeper: Keeper;

  constructor(
    model: Model,
    changes: readonly Change[] = [],
    state: MachineState = restingState(model),
    keeper: Keeper = new ArrayKeeper(model),
  ) {
    this.model = model;
    this.electrics = new Electrics(model);
    this.state = state;
    this.keeper = keeper;
    this.changeList = changes;
    this.stand = new Stand(model);
    this.clockwork = new Clockwork(this);
    this.setChanges(changes);
  }

  copy(): World {
    return new World(this.model, this.changeList, copyState(this.state));
  }

  get changes(): readonly Change[] {
    return this.changeList;
  }

  setChanges(changes: readonly Change[]): void {
    this.changeList = changes;
    this.electrics.setChanges(changes);
    this.stuck = new Map();
    this.stand.renew();
    for (const change of changes) {
      if (change.kind === 'quantity') this.setQuantity(change.quantity, change.value);
      if (change.kind !== 'stuck') continue;
      const region = this.regionIndex(change.region);
      const held = this.model.regions[region].states.indexOf(change.state);
      this.stuck.set(region, held);
    }
    this.state = this.keeper.hold(this.state, this.stuck);
    this.settle();
  }

  setControl(control: string, value: string): void {
    const index = this.model.controlIndex.get(control);
    if (index === undefined) throw new RangeError(`no such control in the book: ${control}`);
    if (!this.model.book.controls[index].values.includes(value)) {
      throw new RangeError(`no such position of control ${control} in the book: ${value}`);
    }
    this.state = this.keeper.setControl(this.state, index, value);
    this.settle();
  }

  setQuantity(name: string, value: number): void {
    const index = this.model.quantityIndex.get(name);
    if (index === undefined) throw new RangeError(`no such quantity in the book: ${name}`);
    this.state = this.keeper.setQuantity(this.state, index, value);
  }

  setRegion(region: string, state: string): void {
    const index = this.regionIndex(region);
    this.state = this.keeper.setRegion(this.state, index, this.model.regions[index].states.indexOf(state));
  }

  /** Lets simulated time pass, whole milliseconds. */
  advance(ms: number, sample?: Sampler): void {
    this.clockwork.advance(ms, sample === undefined ? undefined : () => sample(this));
    this.state = this.keeper.flush(this.state);
  }

  /** Solves and lets everything without a delay happen, until nothing more does. */
  settle(): void {
    this.clockwork.settle();
  }

  solve(): void {
    this.electrics.solve(this.state, this);
  }

  /** Transitions that could leave the present states; none from a region that is stuck. */
  standing(): Standing {
    return this.stand.in(this.state.regions, this.stuck);
  }

  /** These instant transitions happen together. */
  scan(due: readonly Transition[]): void {
    this.state = this.keeper.scan(this.state, this, due);
  }

  pass(stretch: Stretch): void {
    this.state = this.keeper.pass(this.state, this, stretch);
  }

  stateOf(region: string): string {
    const index = this.regionIndex(region);
    return this.model.regions[index].states[this.state.regions[index]];
  }

  controlOf(control: string): string {
    return this.state.controls[this.model.controlIndex.get(control) ?? 0];
  }

  quantityOf(name: string): number {
    return this.state.quantities[this.model.quantityIndex.get(name) ?? 0];
  }

  voltsBetween(red: string, black: string): number {
    return this.volts(nodeOf(this.model, red), nodeOf(this.model, black));
  }

  /** Current through an element by its id, from its `a` to its `b` end, amperes. */
  ampsIn(element: string): number {
    const index = this.model.elementIndex.get(element);
    if (index === undefined) throw new RangeError(`no such element in the book: ${element}`);
    return this.amps(index);
  }

  volts(a: number, b: number): number {
    return this.electrics.network.between(a, b);
  }

  amps(element: number): number {
    return this.electrics.amps(element);
  }

  ohms(a: number, b: number): number {
    const { network } = this.electrics;
    if (this.ohmsSeen.generation !== network.generation)
      this.ohmsSeen = { generation: network.generation, pairs: new Map() };
    const pair = (a + 1) * (this.model.points.length + 1) + b + 1;
    const known = this.ohmsSeen.pairs.get(pair);
    if (known !== undefined) return known;
    const ohms = network.resistance(a, b);
    this.ohmsSeen.pairs.set(pair, ohms);
    return ohms;
  }

  region(index: number): number {
    return this.state.regions[index];
  }

  control(index: number): string {
    return this.state.controls[index];
  }

  quantity(index: number): number {
    return this.state.quantities[index];
  }

  private regionIndex(region: string): number {
    const index = this.model.regionIndex.get(region);
    if (index === undefined) throw new RangeError(`no such region in the book: ${region}`);
    return index;
  }
}

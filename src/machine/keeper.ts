/**
 * Who keeps a machine's state while `World` and the clockwork decide what happens to it. The same moves are either
 * written into plain arrays (here) or sent as events to the statechart (`live.ts`).
 */
import type { View } from './guard.ts';
import type { Model } from './model.ts';
import type { MachineState } from './state.ts';
import { DUE, delayMsOf, type Transition, tableOf } from './table.ts';

/** Time until the next moment at which anything can change. */
export interface Stretch {
  ms: number;
  /** Transitions with a delay whose guard holds now, and those that stop waiting for it. */
  waiting: readonly Transition[];
  lapsed: readonly Transition[];
  /** Writes the quantities at the end of the stretch over those at its beginning. */
  turn: (quantities: Float64Array) => void;
}

/** Every move returns the state after it; the state before it must not be used any more. */
export interface Keeper {
  setControl(state: MachineState, control: number, value: string): MachineState;
  setQuantity(state: MachineState, quantity: number, value: number): MachineState;
  setRegion(state: MachineState, region: number, to: number): MachineState;
  /** These regions, by index, go to these states and stay there; all others are free. */
  hold(state: MachineState, stuck: ReadonlyMap<number, number>): MachineState;
  /** What has no delay and is due at this moment happens, all at once. */
  scan(state: MachineState, view: View, due: readonly Transition[]): MachineState;
  /** Time goes on, and what has waited for its delay at the end of the stretch happens. */
  pass(state: MachineState, view: View, stretch: Stretch): MachineState;
  /** The clock stops for now: whoever listens has to be told of all time that has passed. */
  flush(state: MachineState): MachineState;
}

/** Writes a stretch's progress, quantities and time into a state. Is anything ripe at its end? */
export function elapse(state: MachineState, view: View, stretch: Stretch): boolean {
  let ripe = false;
  for (const t of stretch.lapsed) state.progress[t.index] = 0;
  for (const t of stretch.waiting) {
    state.progress[t.index] += stretch.ms / delayMsOf(t, view);
    if (state.progress[t.index] >= DUE) ripe = true;
  }
  stretch.turn(state.quantities);
  state.timeMs += stretch.ms;
  return ripe;
}

/** Writes into the state itself: no copies, for the diagnosis engine's thousands of machines. */
export class ArrayKeeper implements Keeper {
  private readonly model: Model;

  constructor(model: Model) {
    this.model = model;
  }

  setControl(state: MachineState, control: number, value: string): MachineState {
    state.controls[control] = value;
    return state;
  }

  setQuantity(state: MachineState, quantity: number, value: number): MachineState {
    state.quantities[quantity] = value;
    return state;
  }

  setRegion(state: MachineState, region: number, to: number): MachineState {
    state.regions[region] = to;
    return state;
  }

  hold(state: MachineState, stuck: ReadonlyMap<number, number>): MachineState {
    for (const [region, to] of stuck) state.regions[region] = to;
    return state;
  }

  scan(state: MachineState, _view: View, due: readonly Transition[]): MachineState {
    for (const t of due) this.take(state, t);
    return state;
  }

  pass(state: MachineState, view: View, stretch: Stretch): MachineState {
    if (!elapse(state, view, stretch)) return state;
    for (const t of stretch.waiting) {
      // Taking one starts the others of its region over: the first in the table wins.
      if (state.progress[t.index] >= DUE) this.take(state, t);
    }
    return state;
  }

  flush(state: MachineState): MachineState {
    return state;
  }

  private take(state: MachineState, transition: Transition): void {
    state.regions[transition.region] = transition.to;
    for (const list of tableOf(this.model)[transition.region]) for (const t of list) state.progress[t.index] = 0;
  }
}

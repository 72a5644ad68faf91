/** Everything that changes while a machine is used. Plain numbers and strings: copied to make a world of its own. */
import type { Model } from './model.ts';

export interface MachineState {
  /** Simulated time since the machine was handed over, whole milliseconds. */
  timeMs: number;
  /** State index of each region, in the model's order. */
  regions: Int16Array;
  /** How far each transition has come, 0 to 1: the part of its delay for which its guard has held. */
  progress: Float64Array;
  controls: string[];
  quantities: Float64Array;
}

export function restingState(model: Model): MachineState {
  const quantities = new Float64Array(model.quantities.length);
  model.book.quantities.forEach((q, i) => {
    quantities[i] = q.initial;
  });
  return {
    timeMs: 0,
    regions: Int16Array.from(model.regions, (r) => r.states.indexOf(r.initial)),
    progress: new Float64Array(model.regions.reduce((sum, r) => sum + r.transitions.length, 0)),
    controls: model.book.controls.map((c) => c.initial),
    quantities,
  };
}

export function copyState(state: MachineState): MachineState {
  return {
    timeMs: state.timeMs,
    regions: state.regions.slice(),
    progress: state.progress.slice(),
    controls: state.controls.slice(),
    quantities: state.quantities.slice(),
  };
}

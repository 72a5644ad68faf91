/** A machine's positions as the statechart writes them (names) and as the kernel does (indices). */
import type { Model } from './model.ts';
import type { MachineState } from './state.ts';

/** The chart's state value: which state holds in each parallel region. */
export type ChartValue = {
  clock: 'running';
  controls: Record<string, string>;
  regions: Record<string, string>;
};

/** Dots part the levels of a path in XState; the book's names have dots too. */
export const chartKey = (name: string): string => name.replaceAll('.', '/');

export function chartValue(model: Model, state: Pick<MachineState, 'controls' | 'regions'>): ChartValue {
  return {
    clock: 'running',
    controls: Object.fromEntries(model.book.controls.map((c, i) => [chartKey(c.id), chartKey(state.controls[i])])),
    regions: Object.fromEntries(model.regions.map((r, i) => [chartKey(r.id), chartKey(r.states[state.regions[i]])])),
  };
}

/** Reads state values back into the kernel's indices. */
export class ValueReader {
  private readonly controls: { key: string; values: ReadonlyMap<string, string> }[];
  private readonly regions: { key: string; states: ReadonlyMap<string, number> }[];

  constructor(model: Model) {
    this.controls = model.book.controls.map((c) => ({
      key: chartKey(c.id),
      values: new Map(c.values.map((value) => [chartKey(value), value])),
    }));
    this.regions = model.regions.map((r) => ({
      key: chartKey(r.id),
      states: new Map(r.states.map((state, s) => [chartKey(state), s])),
    }));
  }

  read(value: ChartValue): Pick<MachineState, 'controls' | 'regions'> {
    return {
      controls: this.controls.map(({ key, values }) => values.get(value.controls[key]) ?? ''),
      regions: Int16Array.from(this.regions, ({ key, states }) => states.get(value.regions[key]) ?? -1),
    };
  }
}

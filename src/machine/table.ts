/** The transition tables of all parts, compiled once for a model. */
import { once } from '../circuit/index.ts';
import type { Delay } from '../parts/index.ts';
import { compileGuard, type Test, type View } from './guard.ts';
import type { Model } from './model.ts';

export interface Transition {
  /** Index into `MachineState.progress`. */
  index: number;
  region: number;
  from: number;
  to: number;
  test: Test;
  /** Fixed delay, ms; 0 happens at once. */
  delayMs: number;
  /** Current-dependent delay, with the element's index. */
  curve?: { element: number; ratingAmps: number; rows: [number, number][] };
}

/** Transitions by region, then by the state that they leave. */
export type Table = readonly (readonly Transition[][])[];

export const tableOf: (model: Model) => Table = once(compile);

function compile(model: Model): Table {
  let index = 0;
  return model.regions.map((region, r) => {
    const byState: Transition[][] = region.states.map(() => []);
    for (const t of region.transitions) {
      const from = region.states.indexOf(t.from);
      const transition: Transition = {
        index: index++,
        region: r,
        from,
        to: region.states.indexOf(t.to),
        test: compileGuard(model, t.when),
        ...delayOf(model, t.afterMs),
      };
      byState[from].push(transition);
    }
    return byState;
  });
}

/** Transitions that could leave the present states, in the table's order: those that happen at once, and the others. */
export interface Standing {
  readonly instant: readonly Transition[];
  readonly delayed: readonly Transition[];
}

/** Keeps what stands, as long as no state changes. */
export class Stand {
  private readonly table: Table;
  private readonly seen: Int16Array;
  private kept: Standing | null = null;

  constructor(model: Model) {
    this.table = tableOf(model);
    this.seen = new Int16Array(model.regions.length);
  }

  /** To be told when other regions are stuck than before. */
  renew(): void {
    this.kept = null;
  }

  /** None leaves from a region that is stuck. */
  in(regions: Int16Array, stuck: ReadonlyMap<number, number>): Standing {
    if (this.kept !== null && isSame(this.seen, regions)) return this.kept;
    this.seen.set(regions);
    const instant: Transition[] = [];
    const delayed: Transition[] = [];
    for (let r = 0; r < this.table.length; r++) {
      if (stuck.has(r)) continue;
      for (const t of this.table[r][regions[r]]) (t.delayMs > 0 ? delayed : instant).push(t);
    }
    this.kept = { instant, delayed };
    return this.kept;
  }
}

function isSame(one: Int16Array, other: Int16Array): boolean {
  for (let i = 0; i < one.length; i++) if (one[i] !== other[i]) return false;
  return true;
}

/** All transitions by their index into `MachineState.progress`. */
export function transitionsOf(model: Model): Transition[] {
  return tableOf(model)
    .flat(2)
    .sort((a, b) => a.index - b.index);
}

function delayOf(model: Model, delay: Delay | undefined): Pick<Transition, 'delayMs' | 'curve'> {
  if (delay === undefined || typeof delay === 'number') return { delayMs: delay ?? 0 };
  const element = model.elementIndex.get(delay.element);
  if (element === undefined) throw new RangeError(`no such element in the book: ${delay.element}`);
  return { delayMs: delay.curve[0][1], curve: { element, ratingAmps: delay.ratingAmps, rows: delay.curve } };
}

/** For how long its guard must hold at the present currents, ms. */
export function delayMsOf(t: Transition, view: View): number {
  if (t.curve === undefined) return t.delayMs;
  return openingMs(t.curve.rows, Math.abs(view.amps(t.curve.element)) / t.curve.ratingAmps);
}

/** A transition that has come this far happens; just under 1 guards against a deadline lost to rounding. */
export const DUE = 1 - 1e-9;

/**
 * Opening time at a multiple of rating, ms. Between the rows the rate (1/time) is linear in the square of the
 * current, as heating is; beyond the last row it goes on with the square.
 */
export function openingMs(rows: readonly [number, number][], multiple: number): number {
  const last = rows.length - 1;
  if (multiple >= rows[last][0]) return (rows[last][1] * rows[last][0] * rows[last][0]) / (multiple * multiple);
  const upper = Math.max(
    1,
    rows.findIndex(([m]) => m >= multiple),
  );
  const [m0, t0] = rows[upper - 1];
  const [m1, t1] = rows[upper];
  const share = (multiple * multiple - m0 * m0) / (m1 * m1 - m0 * m0);
  return 1 / (1 / t0 + Math.max(0, share) * (1 / t1 - 1 / t0));
}

/** Guards of the part tables, turned once into tests on a view of the machine. No other code decides a transition. */
import type { Guard } from '../parts/index.ts';
import { type Model, nodeOf } from './model.ts';

/** What a guard may look at. Volts, amperes and ohms are of the network's present solution. */
export interface View {
  volts(a: number, b: number): number;
  amps(element: number): number;
  ohms(a: number, b: number): number;
  region(index: number): number;
  control(index: number): string;
  quantity(index: number): number;
}

export type Test = (view: View) => boolean;

function within(edges: { above?: number; below?: number }): (x: number) => boolean {
  const { above, below } = edges;
  if (above === undefined) return below === undefined ? () => true : (x) => x < below;
  return below === undefined ? (x) => x > above : (x) => x > above && x < below;
}

/** Tests are asked thousands of times a second of simulated time; a loop is quicker than `every`. */
function every(tests: readonly Test[]): Test {
  return (view) => {
    for (const test of tests) if (!test(view)) return false;
    return true;
  };
}

function some(tests: readonly Test[]): Test {
  return (view) => {
    for (const test of tests) if (test(view)) return true;
    return false;
  };
}

function lookUp(index: ReadonlyMap<string, number>, name: string, what: string): number {
  const found = index.get(name);
  if (found === undefined) throw new RangeError(`no such ${what} in the book: ${name}`);
  return found;
}

export function compileGuard(model: Model, guard: Guard): Test {
  if ('all' in guard) {
    return every(guard.all.map((g) => compileGuard(model, g)));
  }
  if ('any' in guard) {
    return some(guard.any.map((g) => compileGuard(model, g)));
  }
  if ('not' in guard) {
    const test = compileGuard(model, guard.not);
    return (view) => !test(view);
  }
  if ('volts' in guard) {
    const [a, b] = guard.volts.map((point) => nodeOf(model, point));
    const ok = within(guard);
    return (view) => ok(view.volts(a, b));
  }
  if ('ohms' in guard) {
    const [a, b] = guard.ohms.map((point) => nodeOf(model, point));
    const ok = within(guard);
    return (view) => ok(view.ohms(a, b));
  }
  if ('amps' in guard) {
    const elements = guard.amps.map((id) => lookUp(model.elementIndex, id, 'element'));
    const ok = within(guard);
    const [only] = elements;
    if (elements.length === 1) return (view) => ok(Math.abs(view.amps(only)));
    return (view) => ok(Math.abs(elements.reduce((sum, e) => sum + view.amps(e), 0)));
  }
  if ('region' in guard) {
    const region = lookUp(model.regionIndex, guard.region, 'region');
    const states = guard.is.map((state) => model.regions[region].states.indexOf(state));
    const [only] = states;
    if (states.length === 1) return (view) => view.region(region) === only;
    return (view) => states.includes(view.region(region));
  }
  if ('control' in guard) {
    const control = lookUp(model.controlIndex, guard.control, 'control');
    return (view) => guard.is.includes(view.control(control));
  }
  const quantity = lookUp(model.quantityIndex, guard.quantity, 'quantity');
  const ok = within(guard);
  return (view) => ok(view.quantity(quantity));
}

/** Finds the current path between the points that a layout names. */
import type { PointId } from '../../parts/index.ts';
import type { Edge, SheetNetwork } from './network.ts';

export interface Step {
  edge: Edge;
  from: PointId;
  to: PointId;
}

/**
 * The shortest way from point to point. Points of `closed` (rails: everything hangs on them) end a way and are never
 * on it; so do the points that it has already passed.
 */
function leg(network: SheetNetwork, from: PointId, to: PointId, closed: ReadonlySet<PointId>): Step[] {
  const reached = new Map<PointId, Step | null>([[from, null]]);
  const queue = [from];
  for (let point = queue.shift(); point !== undefined; point = queue.shift()) {
    if (point === to) break;
    if (point !== from && closed.has(point)) continue;
    for (const edge of network.at.get(point) ?? []) {
      const next = edge.a === point ? edge.b : edge.a;
      if (reached.has(next)) continue;
      reached.set(next, { edge, from: point, to: next });
      queue.push(next);
    }
  }
  const steps: Step[] = [];
  let step = reached.get(to);
  if (step === undefined) throw new RangeError(`the book has no way from ${from} to ${to}`);
  while (step) {
    steps.unshift(step);
    step = reached.get(step.from);
  }
  return steps;
}

export function walk(network: SheetNetwork, stops: readonly PointId[], rails: ReadonlySet<PointId>): Step[] {
  for (const stop of stops) {
    if (!network.at.has(stop)) throw new RangeError(`the book has no point ${stop}`);
  }
  const steps: Step[] = [];
  const closed = new Set(rails);
  for (let i = 1; i < stops.length; i++) {
    const found = leg(network, stops[i - 1], stops[i], closed);
    for (const step of found) closed.add(step.from);
    steps.push(...found);
  }
  return steps;
}

/**
 * Which steps of the elimination the voltages of given nodes depend on: from each node the path to the end, along
 * the neighbour that goes first (the elimination tree; Liu, 1990, from memory). Few nodes need few steps.
 */
import { feedsOf } from './feeds.ts';
import { once } from './once.ts';
import { type Plan, REFERENCE } from './plan.ts';

const pairsOf = once((_plan: Plan) => new Map<number, Int32Array>());
const listsOf = once((plan: Plan) => once((nodes: ArrayLike<number>) => stepsFrom(plan, nodes)));

/** Steps that two nodes depend on, in order. */
export function wayFrom(plan: Plan, a: number, b: number): Int32Array {
  const pairs = pairsOf(plan);
  const key = (a + 1) * (plan.nodeCount + 1) + b + 1;
  const known = pairs.get(key);
  if (known !== undefined) return known;
  const way = stepsFrom(plan, [a, b]);
  pairs.set(key, way);
  return way;
}

/** Steps that a list of nodes depends on, in order. The list must not be changed afterwards. */
export function wayFromAll(plan: Plan, nodes: ArrayLike<number>): Int32Array {
  return listsOf(plan)(nodes);
}

function stepsFrom(plan: Plan, nodes: ArrayLike<number>): Int32Array {
  const { place } = plan;
  const { parent } = feedsOf(plan);
  const on = new Uint8Array(place.length);
  let count = 0;
  for (let i = 0; i < nodes.length; i++) {
    let s = nodes[i] === REFERENCE ? -1 : place[nodes[i]];
    while (s >= 0 && on[s] === 0) {
      on[s] = 1;
      count++;
      s = parent[s];
    }
  }
  const steps = new Int32Array(count);
  let to = 0;
  for (let s = 0; s < on.length; s++) if (on[s] === 1) steps[to++] = s;
  return steps;
}

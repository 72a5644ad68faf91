/** What flows into each number of an elimination, and in what order it is added: worked out once for a plan. */
import { once } from './once.ts';
import { type Plan, REFERENCE } from './plan.ts';

/** Lists of numbers side by side: list `i` is `items[start[i]..start[i+1])`. */
export interface Lists {
  readonly start: Int32Array;
  readonly items: Int32Array;
}

export interface Feeds {
  /** By entry: the edges between its two nodes, and the pairs of earlier steps that join them. */
  readonly edges: Lists;
  readonly pairs: Lists;
  /** By step: the edges from its node to the reference, and the entries of earlier steps that lead to it. */
  readonly leaks: Lists;
  readonly entries: Lists;
  /** By edge: the first step that it touches; -1 for one that touches nothing. */
  readonly stepOf: Int32Array;
  /** By step: the neighbour that is eliminated first; -1 at the end. */
  readonly parent: Int32Array;
}

export const feedsOf: (plan: Plan) => Feeds = once(gather);

function gather(plan: Plan): Feeds {
  const { edgeA, edgeB, edgeEntry, edgeCount, place, start, later, pairs } = plan;
  const steps = place.length;
  const nodeOfLeak = (e: number): number => {
    if (edgeEntry[e] >= 0 || edgeA[e] === edgeB[e]) return REFERENCE;
    return edgeA[e] === REFERENCE ? edgeB[e] : edgeA[e];
  };
  const leakStep = new Int32Array(edgeCount).map((_, e) => {
    const node = nodeOfLeak(e);
    return node === REFERENCE ? -1 : place[node];
  });
  const parent = new Int32Array(steps).fill(-1);
  for (let s = 0; s < steps; s++) {
    for (let k = start[s]; k < start[s + 1]; k++) if (parent[s] < 0 || later[k] < parent[s]) parent[s] = later[k];
  }
  return {
    edges: listsBy(edgeEntry, later.length),
    pairs: listsBy(pairs, later.length),
    leaks: listsBy(leakStep, steps),
    entries: listsBy(later, steps),
    stepOf: leakStep.map((step, e) => (edgeEntry[e] < 0 ? step : Math.min(place[edgeA[e]], place[edgeB[e]]))),
    parent,
  };
}

/** Indices of `keys` gathered by their key, each list in rising order; negative keys are left out. */
function listsBy(keys: Int32Array, count: number): Lists {
  const start = new Int32Array(count + 1);
  for (const key of keys) if (key >= 0) start[key + 1]++;
  for (let i = 0; i < count; i++) start[i + 1] += start[i];
  const next = start.slice(0, count);
  const items = new Int32Array(start[count]);
  keys.forEach((key, i) => {
    if (key >= 0) items[next[key]++] = i;
  });
  return { start, items };
}

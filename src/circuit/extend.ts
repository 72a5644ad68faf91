/** A plan with more edges in it: a lead, a lamp, a chafed wire laid across the network after it was planned. */
import { once } from './once.ts';
import { type Plan, REFERENCE } from './plan.ts';

type Ends = readonly [number, number];

/** Many machines with one and the same fault share its plan. Beyond so many they start anew. */
const MOST_KEPT = 512;
const extensionsOf = once((_plan: Plan) => new Map<string, Plan>());

/** The same plan with more edges: its order stands, and the fill that they bring is taken in. */
export function extendPlan(plan: Plan, more: readonly Ends[]): Plan {
  const known = extensionsOf(plan);
  const key = more.join(' ');
  const same = known.get(key);
  if (same !== undefined) return same;
  if (known.size >= MOST_KEPT) known.clear();
  const extended = withEdges(plan, more);
  known.set(key, extended);
  return extended;
}

/** Entries that a step gains, by the step that each leads to, with numbers beyond the plan's own. */
type Gained = Map<number, { later: number[]; entries: number[] }>;

function withEdges(plan: Plan, more: readonly Ends[]): Plan {
  const gained: Gained = new Map();
  let count = plan.later.length;
  /** Entry that joins two steps, kept with the one that is eliminated first; a new one where they did not touch. */
  const join = (i: number, j: number): number => {
    const [s, other] = i < j ? [i, j] : [j, i];
    for (let k = plan.start[s]; k < plan.start[s + 1]; k++) if (plan.later[k] === other) return k;
    const own = gained.get(s) ?? { later: [], entries: [] };
    const known = own.later.indexOf(other);
    if (known >= 0) return own.entries[known];
    own.later.push(other);
    own.entries.push(count);
    gained.set(s, own);
    return count++;
  };
  const added = more.map(([a, b]) =>
    a === REFERENCE || b === REFERENCE || a === b ? -1 : join(plan.place[a], plan.place[b]),
  );
  const pairs = pairsOf(plan, gained, join);
  const { start, later, entryOf } = renumbered(plan, gained, count);
  const pairStart = new Int32Array(plan.pairStart.length);
  for (let s = 0; s + 1 < start.length; s++) {
    const size = start[s + 1] - start[s];
    pairStart[s + 1] = pairStart[s] + (size * (size - 1)) / 2;
  }
  return {
    nodeCount: plan.nodeCount,
    edgeCount: plan.edgeCount + more.length,
    edgeA: longer(plan.edgeA, more, (e) => e[0]),
    edgeB: longer(plan.edgeB, more, (e) => e[1]),
    order: plan.order,
    place: plan.place,
    start,
    later,
    pairStart,
    pairs: Int32Array.from(pairs, (entry) => entryOf[entry]),
    edgeEntry: longer(plan.edgeEntry, added, (e) => e).map((entry) => (entry < 0 ? -1 : entryOf[entry])),
  };
}

/** Pairs of all steps, by the numbers that entries have before they are put in order. */
function pairsOf(plan: Plan, gained: Gained, join: (i: number, j: number) => number): number[] {
  const pairs: number[] = [];
  // Joining the neighbours of one step can only touch later steps.
  for (let s = 0; s < plan.order.length; s++) {
    const own = gained.get(s);
    if (own === undefined) {
      for (let p = plan.pairStart[s]; p < plan.pairStart[s + 1]; p++) pairs.push(plan.pairs[p]);
      continue;
    }
    const all = [...plan.later.subarray(plan.start[s], plan.start[s + 1]), ...own.later];
    for (let p = 0; p < all.length; p++) for (let q = p + 1; q < all.length; q++) pairs.push(join(all[p], all[q]));
  }
  return pairs;
}

/** What a step gains stands behind what it had. */
function renumbered(plan: Plan, gained: Gained, count: number) {
  const start = new Int32Array(plan.start.length);
  const later = new Int32Array(count);
  const entryOf = new Int32Array(count);
  let to = 0;
  for (let s = 0; s < plan.order.length; s++) {
    for (let k = plan.start[s]; k < plan.start[s + 1]; k++) {
      entryOf[k] = to;
      later[to++] = plan.later[k];
    }
    gained.get(s)?.entries.forEach((entry, i) => {
      entryOf[entry] = to;
      later[to++] = gained.get(s)?.later[i] ?? 0;
    });
    start[s + 1] = to;
  }
  return { start, later, entryOf };
}

function longer<T>(list: Int32Array, more: readonly T[], number: (item: T) => number): Int32Array {
  const out = new Int32Array(list.length + more.length);
  out.set(list);
  more.forEach((item, i) => {
    out[list.length + i] = number(item);
  });
  return out;
}

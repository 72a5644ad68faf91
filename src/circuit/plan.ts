/**
 * The frozen shape of a network: which nodes touch, in what order they are eliminated, and where fill-in falls.
 * Made once for a book; every state, fault and reading of that book is a set of numbers poured into it.
 */

/** Node index that stands for the reference (SPICE node 0). */
export const REFERENCE = -1;

export interface Plan {
  readonly nodeCount: number;
  readonly edgeCount: number;
  readonly edgeA: Int32Array;
  readonly edgeB: Int32Array;
  /** Node eliminated at each step. */
  readonly order: Int32Array;
  /** Slot into which an edge's conductance is added; -1 for an edge to the reference or a loop. */
  readonly edgeSlot: Int32Array;
  readonly slotCount: number;
  /** Neighbours still standing when step `s` eliminates its node: `neighbours[start[s]..start[s+1])`, with their slots. */
  readonly start: Int32Array;
  readonly neighbours: Int32Array;
  readonly slots: Int32Array;
  /** For every pair of those neighbours, in order (0,1) (0,2) … (1,2) …, the slot that joins them. */
  readonly pairSlots: Int32Array;
}

/**
 * Orders the elimination by least degree (ties by index) and records the fill-in.
 * @param edges pairs of node indices; `REFERENCE` stands for the reference node
 */
export function makePlan(nodeCount: number, edges: ReadonlyArray<readonly [number, number]>): Plan {
  const adjacent: Map<number, number>[] = Array.from({ length: nodeCount }, () => new Map());
  let slotCount = 0;
  const join = (i: number, j: number): number => {
    const known = adjacent[i].get(j);
    if (known !== undefined) return known;
    adjacent[i].set(j, slotCount);
    adjacent[j].set(i, slotCount);
    return slotCount++;
  };
  const edgeSlot = Int32Array.from(edges, ([a, b]) =>
    a === REFERENCE || b === REFERENCE || a === b ? -1 : join(a, b),
  );

  const order: number[] = [];
  const start: number[] = [0];
  const neighbours: number[] = [];
  const slots: number[] = [];
  const pairSlots: number[] = [];
  const standing = new Set(Array.from({ length: nodeCount }, (_, i) => i));
  while (standing.size > 0) {
    const node = leastDegree(standing, adjacent);
    const around = [...adjacent[node]].sort((p, q) => p[0] - q[0]);
    for (const [neighbour, slot] of around) {
      neighbours.push(neighbour);
      slots.push(slot);
      adjacent[neighbour].delete(node);
    }
    for (let p = 0; p < around.length; p++) {
      for (let q = p + 1; q < around.length; q++) pairSlots.push(join(around[p][0], around[q][0]));
    }
    order.push(node);
    start.push(neighbours.length);
    standing.delete(node);
  }
  return {
    nodeCount,
    edgeCount: edges.length,
    edgeA: Int32Array.from(edges, (e) => e[0]),
    edgeB: Int32Array.from(edges, (e) => e[1]),
    order: Int32Array.from(order),
    edgeSlot,
    slotCount,
    start: Int32Array.from(start),
    neighbours: Int32Array.from(neighbours),
    slots: Int32Array.from(slots),
    pairSlots: Int32Array.from(pairSlots),
  };
}

/** The same plan with more edges: its order stands, and the fill that they bring is taken in. */
export function extendPlan(plan: Plan, more: ReadonlyArray<readonly [number, number]>): Plan {
  const steps = new Map<number, Step>();
  let slotCount = plan.slotCount;
  const place = placesOf(plan);
  /** Slot that joins two nodes, kept with the one that is eliminated first; a new one where they did not touch. */
  const join = (i: number, j: number): number => {
    const [s, other] = place[i] < place[j] ? [place[i], j] : [place[j], i];
    const step = steps.get(s);
    const known = step === undefined ? slotIn(plan, s, other) : (step.slots[step.neighbours.indexOf(other)] ?? -1);
    if (known >= 0) return known;
    const changed = step ?? stepOf(plan, s);
    changed.neighbours.push(other);
    changed.slots.push(slotCount);
    steps.set(s, changed);
    return slotCount++;
  };
  const added = more.map(([a, b]) => (a === REFERENCE || b === REFERENCE || a === b ? -1 : join(a, b)));
  // Joining the neighbours of one step can only touch later steps.
  for (let s = 0; s < plan.order.length; s++) {
    const step = steps.get(s);
    step?.neighbours.forEach((p, k) => {
      for (let q = k + 1; q < step.neighbours.length; q++) step.pairSlots.push(join(p, step.neighbours[q]));
    });
  }
  return {
    nodeCount: plan.nodeCount,
    edgeCount: plan.edgeCount + more.length,
    edgeA: spliced(plan.edgeA, [[plan.edgeCount, plan.edgeCount, more.map((e) => e[0])]]),
    edgeB: spliced(plan.edgeB, [[plan.edgeCount, plan.edgeCount, more.map((e) => e[1])]]),
    order: plan.order,
    edgeSlot: spliced(plan.edgeSlot, [[plan.edgeCount, plan.edgeCount, added]]),
    slotCount,
    ...withSteps(plan, steps),
  };
}

/** What one step of the elimination touches, where it differs from the plan's. */
interface Step {
  neighbours: number[];
  slots: number[];
  pairSlots: number[];
}

function stepOf(plan: Plan, s: number): Step {
  const [first, last] = [plan.start[s], plan.start[s + 1]];
  return {
    neighbours: [...plan.neighbours.subarray(first, last)],
    slots: [...plan.slots.subarray(first, last)],
    pairSlots: [],
  };
}

function slotIn(plan: Plan, s: number, neighbour: number): number {
  for (let k = plan.start[s]; k < plan.start[s + 1]; k++) if (plan.neighbours[k] === neighbour) return plan.slots[k];
  return -1;
}

const places = new WeakMap<Plan, Int32Array>();

/** At which step each node is eliminated. */
function placesOf(plan: Plan): Int32Array {
  const known = places.get(plan);
  if (known !== undefined) return known;
  const place = new Int32Array(plan.nodeCount);
  plan.order.forEach((node, s) => {
    place[node] = s;
  });
  places.set(plan, place);
  return place;
}

/** The plan's lists with the changed steps in place of its own. */
function withSteps(
  plan: Plan,
  steps: ReadonlyMap<number, Step>,
): Pick<Plan, 'start' | 'neighbours' | 'slots' | 'pairSlots'> {
  const start = new Int32Array(plan.start.length);
  const neighbours: Cut[] = [];
  const slots: Cut[] = [];
  const pairSlots: Cut[] = [];
  let pair = 0;
  for (let s = 0; s < plan.order.length; s++) {
    const [first, last] = [plan.start[s], plan.start[s + 1]];
    const pairs = ((last - first) * (last - first - 1)) / 2;
    const step = steps.get(s);
    start[s + 1] = start[s] + (step === undefined ? last - first : step.neighbours.length);
    if (step !== undefined) {
      neighbours.push([first, last, step.neighbours]);
      slots.push([first, last, step.slots]);
      pairSlots.push([pair, pair + pairs, step.pairSlots]);
    }
    pair += pairs;
  }
  return {
    start,
    neighbours: spliced(plan.neighbours, neighbours),
    slots: spliced(plan.slots, slots),
    pairSlots: spliced(plan.pairSlots, pairSlots),
  };
}

/** From here to there in a list, and what stands there instead. */
type Cut = readonly [first: number, last: number, instead: readonly number[]];

/** The list with its cuts, given in rising order, replaced. */
function spliced(list: Int32Array, cuts: readonly Cut[]): Int32Array {
  const length = cuts.reduce((sum, [first, last, instead]) => sum + instead.length - (last - first), list.length);
  const out = new Int32Array(length);
  let from = 0;
  let to = 0;
  for (const [first, last, instead] of cuts) {
    out.set(list.subarray(from, first), to);
    to += first - from;
    out.set(instead, to);
    to += instead.length;
    from = last;
  }
  out.set(list.subarray(from), to);
  return out;
}

function leastDegree(standing: Set<number>, adjacent: Map<number, number>[]): number {
  let best = -1;
  let degree = Number.POSITIVE_INFINITY;
  for (const node of standing) {
    const size = adjacent[node].size;
    if (size < degree) {
      degree = size;
      best = node;
      if (size <= 1) break;
    }
  }
  return best;
}

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
  /** Node eliminated at each step, and the step at which each node is. */
  readonly order: Int32Array;
  readonly place: Int32Array;
  /**
   * Entries `start[s]..start[s+1])` are the neighbours still standing at step `s`; `later` has the steps at which
   * those go. Two nodes meet in one entry only, which therefore also numbers the conductance between them.
   */
  readonly start: Int32Array;
  readonly later: Int32Array;
  /** First pair of each step. For every pair of a step's entries, in order (0,1) (0,2) … (1,2) …, the entry that joins them. */
  readonly pairStart: Int32Array;
  readonly pairs: Int32Array;
  /** Entry into which an edge's conductance is added; -1 for an edge to the reference or a loop. */
  readonly edgeEntry: Int32Array;
}

/** Nodes that nobody looks at go first while they touch no more than this many others: beyond it the fill outgrows the gain. */
const MOST_TOUCHED = 3;

/**
 * Orders the elimination by least degree (ties by index) and records the fill-in.
 * @param edges pairs of node indices; `REFERENCE` stands for the reference node
 * @param watched nodes that are looked at often: they go late, so that their volts depend on few others
 */
export function makePlan(
  nodeCount: number,
  edges: ReadonlyArray<readonly [number, number]>,
  watched: Iterable<number> = [],
): Plan {
  const adjacent: Map<number, number>[] = Array.from({ length: nodeCount }, () => new Map());
  let slotCount = 0;
  const join = (i: number, j: number): number => {
    const known = adjacent[i].get(j);
    if (known !== undefined) return known;
    adjacent[i].set(j, slotCount);
    adjacent[j].set(i, slotCount);
    return slotCount++;
  };
  const edgeSlots = edges.map(([a, b]) => (a === REFERENCE || b === REFERENCE || a === b ? -1 : join(a, b)));

  const order: number[] = [];
  const start: number[] = [0];
  const neighbours: number[] = [];
  const pairStart: number[] = [0];
  const pairSlots: number[] = [];
  /** Slots are numbered as they are found, entries as they are eliminated. */
  const entryOf: number[] = [];
  const standing = new Set(Array.from({ length: nodeCount }, (_, i) => i));
  const watchedNodes = new Set(watched);
  let early = new Set([...standing].filter((node) => !watchedNodes.has(node)));
  while (standing.size > 0) {
    const first = leastDegree(early, adjacent);
    // From the first that touches too many on, all go alike.
    if (first < 0 || adjacent[first].size > MOST_TOUCHED) early = standing;
    const node = early === standing ? leastDegree(standing, adjacent) : first;
    const around = [...adjacent[node]].sort((p, q) => p[0] - q[0]);
    for (const [neighbour, slot] of around) {
      entryOf[slot] = neighbours.length;
      neighbours.push(neighbour);
      adjacent[neighbour].delete(node);
    }
    for (let p = 0; p < around.length; p++) {
      for (let q = p + 1; q < around.length; q++) pairSlots.push(join(around[p][0], around[q][0]));
    }
    order.push(node);
    start.push(neighbours.length);
    pairStart.push(pairSlots.length);
    standing.delete(node);
    early.delete(node);
  }
  const place = new Int32Array(nodeCount);
  order.forEach((node, s) => {
    place[node] = s;
  });
  return {
    nodeCount,
    edgeCount: edges.length,
    edgeA: Int32Array.from(edges, (e) => e[0]),
    edgeB: Int32Array.from(edges, (e) => e[1]),
    order: Int32Array.from(order),
    place,
    start: Int32Array.from(start),
    later: Int32Array.from(neighbours, (node) => place[node]),
    pairStart: Int32Array.from(pairStart),
    pairs: Int32Array.from(pairSlots, (slot) => entryOf[slot]),
    edgeEntry: Int32Array.from(edgeSlots, (slot) => (slot < 0 ? -1 : entryOf[slot])),
  };
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

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
  const edgeSlot = Int32Array.from(edges, ([a, b]) => (a === REFERENCE || b === REFERENCE || a === b ? -1 : join(a, b)));

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

/**
 * The factors of a network. Where few conductances moved, only the steps that come after them are done again; each number
 * is summed in the same order as ever, so that the result is the same to the last bit.
 */
import { type Feeds, feedsOf } from './feeds.ts';
import type { Plan } from './plan.ts';

/** Every node's leak to the reference, siemens: an island without any other path reads as floating. */
export const LEAK_SIEMENS = 1e-12;

/** One step by itself costs about as much as so many in a row. */
const MOST_SHARE = 3;

export class Elimination {
  readonly plan: Plan;
  /** By entry: share of the step's conductance that leads to that neighbour. */
  readonly ratio: Float64Array;
  /** By step: all conductance of its node, siemens. */
  readonly total: Float64Array;
  private readonly feeds: Feeds;
  /** By entry and by step: conductance to the neighbour and to the reference, siemens. */
  private readonly weight: Float64Array;
  private readonly leak: Float64Array;
  /** What each pair adds to another entry, and each entry to its neighbour's leak, siemens. */
  private readonly pairPart: Float64Array;
  private readonly leakPart: Float64Array;
  /** Conductances of the edges as they were last, siemens. */
  private readonly done: Float64Array;
  private readonly isMoved: Uint8Array;

  constructor(plan: Plan) {
    this.plan = plan;
    this.feeds = feedsOf(plan);
    const perEntry = (): Float64Array => new Float64Array(plan.later.length);
    const perStep = (): Float64Array => new Float64Array(plan.nodeCount);
    [this.ratio, this.weight, this.leakPart] = [perEntry(), perEntry(), perEntry()];
    [this.total, this.leak] = [perStep(), perStep()];
    this.pairPart = new Float64Array(plan.pairs.length);
    this.done = new Float64Array(plan.edgeCount);
    this.isMoved = new Uint8Array(plan.nodeCount);
  }

  /** All steps, with these conductances of the edges, siemens. */
  run(siemens: Float64Array): void {
    const { ratio, total, weight, leak, leakPart, pairPart } = this;
    const { start, later, pairs } = this.plan;
    this.gather(siemens);
    let pair = 0;
    for (let s = 0; s < total.length; s++) {
      const first = start[s];
      const last = start[s + 1];
      const own = leak[s];
      let sum = own;
      for (let k = first; k < last; k++) sum += weight[k];
      total[s] = sum;
      for (let k = first; k < last; k++) {
        const r = weight[k] / sum;
        const part = r * own;
        ratio[k] = r;
        leakPart[k] = part;
        leak[later[k]] += part;
      }
      for (let p = first; p < last; p++) {
        const r = ratio[p];
        for (let q = p + 1; q < last; q++) {
          const part = r * weight[q];
          pairPart[pair] = part;
          weight[pairs[pair++]] += part;
        }
      }
    }
  }

  /** Adds up the conductance between every two nodes, and from each to the reference. */
  private gather(siemens: Float64Array): void {
    const { weight, leak } = this;
    const { edgeEntry } = this.plan;
    const { stepOf } = this.feeds;
    this.done.set(siemens);
    weight.fill(0);
    leak.fill(LEAK_SIEMENS);
    for (let e = 0; e < siemens.length; e++) {
      const g = siemens[e];
      if (g === 0) continue;
      if (edgeEntry[e] >= 0) weight[edgeEntry[e]] += g;
      else if (stepOf[e] >= 0) leak[stepOf[e]] += g;
    }
  }

  /** Only the steps that these edges come to, as far as they have moved since the last time. Did any? */
  rerun(siemens: Float64Array, edges: readonly number[]): boolean {
    const { done, isMoved } = this;
    const { stepOf, parent } = this.feeds;
    let first = isMoved.length;
    let count = 0;
    for (let i = 0; i < edges.length; i++) {
      const e = edges[i];
      if (siemens[e] === done[e]) continue;
      done[e] = siemens[e];
      let s = stepOf[e];
      if (s >= 0 && s < first) first = s;
      while (s >= 0 && isMoved[s] === 0) {
        isMoved[s] = 1;
        count++;
        s = parent[s];
      }
    }
    if (count * MOST_SHARE > isMoved.length) {
      isMoved.fill(0);
      this.run(siemens);
    } else if (count > 0) this.steps(first);
    return count > 0;
  }

  /** What has moved from this step on, each step by itself, from what is known to flow into it. */
  private steps(first: number): void {
    const { isMoved, ratio, total, weight, leakPart, pairPart, done } = this;
    const { start, pairStart } = this.plan;
    const { start: edgeStart, items: edges } = this.feeds.edges;
    const { start: feedStart, items: feeds } = this.feeds.pairs;
    for (let s = first; s < isMoved.length; s++) {
      if (isMoved[s] === 0) continue;
      isMoved[s] = 0;
      const last = start[s + 1];
      const leak = this.leakOf(s);
      let sum = leak;
      for (let k = start[s]; k < last; k++) {
        let w = 0;
        for (let i = edgeStart[k]; i < edgeStart[k + 1]; i++) w += done[edges[i]];
        for (let i = feedStart[k]; i < feedStart[k + 1]; i++) w += pairPart[feeds[i]];
        weight[k] = w;
        sum += w;
      }
      total[s] = sum;
      let pair = pairStart[s];
      for (let k = start[s]; k < last; k++) {
        const r = weight[k] / sum;
        ratio[k] = r;
        leakPart[k] = r * leak;
        for (let q = k + 1; q < last; q++) pairPart[pair++] = r * weight[q];
      }
    }
  }

  private leakOf(s: number): number {
    const { done, leakPart } = this;
    const { start: edgeStart, items: edges } = this.feeds.leaks;
    const { start, items } = this.feeds.entries;
    let leak = LEAK_SIEMENS;
    for (let i = edgeStart[s]; i < edgeStart[s + 1]; i++) leak += done[edges[i]];
    for (let i = start[s]; i < start[s + 1]; i++) leak += leakPart[items[i]];
    return leak;
  }
}

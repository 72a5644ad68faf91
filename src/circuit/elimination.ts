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

  /** Only the steps that what has moved since the last time comes to. Did anything move? */
  rerun(siemens: Float64Array): boolean {
    const { done, isMoved } = this;
    const { stepOf, parent } = this.feeds;
    let first = -1;
    let count = 0;
    for (let e = 0; e < siemens.length; e++) {
      if (siemens[e] === done[e]) continue;
      done[e] = siemens[e];
      let s = stepOf[e];
      if (s >= 0 && (first < 0 || s < first)) first = s;
      while (s >= 0 && isMoved[s] === 0) {
        isMoved[s] = 1;
        count++;
        s = parent[s];
      }
    }
    if (count === 0) return false;
    if (count * MOST_SHARE > isMoved.length) {
      isMoved.fill(0);
      this.run(siemens);
      return true;
    }
    for (let s = first; s < isMoved.length; s++) {
      if (isMoved[s] === 0) continue;
      isMoved[s] = 0;
      this.step(s);
    }
    return true;
  }

  /** One step by itself, from what is known to flow into it. */
  private step(s: number): void {
    const { ratio, weight, leakPart, pairPart, done } = this;
    const { edges, pairs } = this.feeds;
    const first = this.plan.start[s];
    const last = this.plan.start[s + 1];
    const leak = this.leakOf(s);
    let sum = leak;
    for (let k = first; k < last; k++) {
      let w = 0;
      for (let i = edges.start[k]; i < edges.start[k + 1]; i++) w += done[edges.items[i]];
      for (let i = pairs.start[k]; i < pairs.start[k + 1]; i++) w += pairPart[pairs.items[i]];
      weight[k] = w;
      sum += w;
    }
    this.leak[s] = leak;
    this.total[s] = sum;
    let pair = this.plan.pairStart[s];
    for (let k = first; k < last; k++) {
      const r = weight[k] / sum;
      ratio[k] = r;
      leakPart[k] = r * leak;
      for (let q = k + 1; q < last; q++) pairPart[pair++] = r * weight[q];
    }
  }

  private leakOf(s: number): number {
    const { leaks, entries } = this.feeds;
    const { done, leakPart } = this;
    let leak = LEAK_SIEMENS;
    for (let i = leaks.start[s]; i < leaks.start[s + 1]; i++) leak += done[leaks.items[i]];
    for (let i = entries.start[s]; i < entries.start[s + 1]; i++) leak += leakPart[entries.items[i]];
    return leak;
  }
}

/**
 * DC solution of a network of conductances and Norton sources by star-mesh elimination.
 *
 * A node with conductances g1..gk to its neighbours and a leak to the reference is replaced by conductances
 * gi*gj/sum between them (Rosen, "A new network theorem", 1924: from memory). Only positive numbers are added, multiplied
 * and divided, so nothing cancels: a battery cable of 0.3 milliohm beside a leak of 1e-12 S keeps full accuracy, and a
 * floating island is an ordinary case. The same subtraction-free idea is Grassmann, Taksar and Heyman's for Markov
 * chains (1985, from memory).
 */
import { extendPlan, makePlan, type Plan, REFERENCE } from './plan.ts';

/** Every node's leak to the reference, siemens: an island without any other path reads as floating. */
export const LEAK_SIEMENS = 1e-12;

/** A conductance laid between two nodes outside the frozen plan: a chafed wire, a lamp, a jumper. Siemens. */
export interface Bridge {
  a: number;
  b: number;
  siemens: number;
}

export class Network {
  readonly plan: Plan;
  /** Conductance of each edge, siemens. */
  readonly siemens: Float64Array;
  /** Norton current of each edge, amperes, driven from `b` to `a` inside the element. */
  readonly norton: Float64Array;
  /** Node voltages against the reference after `solve`, volts. */
  readonly volts: Float64Array;
  bridges: Bridge[] = [];
  /** Edges that may carry a Norton current; all of them unless the owner knows better. */
  sources: ArrayLike<number>;
  /** Counts the eliminations: what depends on conductances alone holds as long as this stands. */
  generation = 0;

  /** The plan with the bridges in it: they are eliminated like any edge, so that nothing cancels on an island either. */
  private active: Plan;
  private laid = '';
  private weight: Float64Array;
  private ratio: Float64Array;
  private readonly leak: Float64Array;
  private readonly total: Float64Array;
  private readonly scratch: Float64Array;
  private readonly probe: Float64Array;
  private readonly ways = new Map<number, Int32Array>();
  private waysOf: Plan | null = null;

  constructor(plan: Plan) {
    this.plan = plan;
    this.active = plan;
    this.sources = Array.from({ length: plan.edgeCount }, (_, e) => e);
    this.siemens = new Float64Array(plan.edgeCount);
    this.norton = new Float64Array(plan.edgeCount);
    this.volts = new Float64Array(plan.nodeCount);
    this.weight = new Float64Array(plan.slotCount);
    this.ratio = new Float64Array(plan.neighbours.length);
    this.leak = new Float64Array(plan.nodeCount);
    this.total = new Float64Array(plan.nodeCount);
    this.scratch = new Float64Array(plan.nodeCount);
    this.probe = new Float64Array(plan.nodeCount);
  }

  static of(nodeCount: number, edges: ReadonlyArray<readonly [number, number]>): Network {
    return new Network(makePlan(nodeCount, edges));
  }

  /** Eliminates with the present conductances. Needed after any of them, or the bridges, changed. */
  factor(): void {
    this.generation++;
    this.layBridges();
    const { weight, ratio, leak, total } = this;
    this.gather();
    const { order, start, neighbours, slots, pairSlots } = this.active;
    let pair = 0;
    for (let s = 0; s < order.length; s++) {
      const node = order[s];
      const first = start[s];
      const last = start[s + 1];
      let sum = leak[node];
      for (let k = first; k < last; k++) sum += weight[slots[k]];
      total[node] = sum;
      for (let k = first; k < last; k++) {
        const r = weight[slots[k]] / sum;
        ratio[k] = r;
        leak[neighbours[k]] += r * leak[node];
      }
      for (let p = first; p < last; p++) {
        const r = ratio[p];
        for (let q = p + 1; q < last; q++) weight[pairSlots[pair++]] += r * weight[slots[q]];
      }
    }
  }

  /** Takes the bridges into the plan when they lie elsewhere than before. */
  private layBridges(): void {
    const ends = this.bridges.map((bridge): [number, number] => [bridge.a, bridge.b]);
    const laid = ends.join(' ');
    if (laid === this.laid) return;
    this.laid = laid;
    this.active = ends.length === 0 ? this.plan : extendPlan(this.plan, ends);
    this.weight = new Float64Array(this.active.slotCount);
    this.ratio = new Float64Array(this.active.neighbours.length);
  }

  /** Adds up the conductance between every two nodes, and from each to the reference. */
  private gather(): void {
    const { active, siemens, bridges, weight, leak } = this;
    const { edgeCount } = this.plan;
    weight.fill(0);
    leak.fill(LEAK_SIEMENS);
    for (let e = 0; e < active.edgeCount; e++) {
      const g = e < edgeCount ? siemens[e] : bridges[e - edgeCount].siemens;
      if (g === 0) continue;
      const slot = active.edgeSlot[e];
      if (slot >= 0) weight[slot] += g;
      else if (active.edgeA[e] !== active.edgeB[e]) {
        leak[active.edgeA[e] === REFERENCE ? active.edgeB[e] : active.edgeA[e]] += g;
      }
    }
  }

  /** Solves for the present Norton currents with the last factors. */
  solve(): Float64Array {
    const { plan, norton, scratch, volts } = this;
    scratch.fill(0);
    for (let k = 0; k < this.sources.length; k++) {
      const e = this.sources[k];
      const amps = norton[e];
      if (amps === 0) continue;
      if (plan.edgeA[e] !== REFERENCE) scratch[plan.edgeA[e]] += amps;
      if (plan.edgeB[e] !== REFERENCE) scratch[plan.edgeB[e]] -= amps;
    }
    this.substitute(scratch, volts);
    return volts;
  }

  /** Node voltages for one ampere driven into `a` and out of `b`, sources at rest. */
  unit(a: number, b: number, out: Float64Array = new Float64Array(this.plan.nodeCount)): Float64Array {
    const { scratch } = this;
    scratch.fill(0);
    if (a !== REFERENCE) scratch[a] += 1;
    if (b !== REFERENCE) scratch[b] -= 1;
    this.substitute(scratch, out);
    return out;
  }

  /**
   * Resistance between two nodes with all sources at rest (Thevenin), ohms. Only the nodes on the way from the two to
   * the end of the elimination take part; they are few.
   */
  resistance(a: number, b: number): number {
    const { order, start, neighbours } = this.active;
    const { scratch, probe, ratio, total } = this;
    const steps = this.wayFrom(a, b);
    for (const s of steps) scratch[order[s]] = 0;
    if (a !== REFERENCE) scratch[a] += 1;
    if (b !== REFERENCE) scratch[b] -= 1;
    for (const s of steps) {
      const amps = scratch[order[s]];
      if (amps === 0) continue;
      for (let k = start[s]; k < start[s + 1]; k++) scratch[neighbours[k]] += ratio[k] * amps;
    }
    for (let i = steps.length - 1; i >= 0; i--) {
      const s = steps[i];
      let v = scratch[order[s]] / total[order[s]];
      for (let k = start[s]; k < start[s + 1]; k++) v += ratio[k] * probe[neighbours[k]];
      probe[order[s]] = v;
    }
    return at(probe, a) - at(probe, b);
  }

  /** Steps of the elimination that two nodes' voltages depend on, in order. Kept for the plan in force. */
  private wayFrom(a: number, b: number): Int32Array {
    if (this.waysOf !== this.active) {
      this.waysOf = this.active;
      this.ways.clear();
    }
    const key = (a + 1) * (this.plan.nodeCount + 1) + b + 1;
    const known = this.ways.get(key);
    if (known !== undefined) return known;
    const { start, neighbours, order } = this.active;
    const stepOf = new Int32Array(order.length);
    for (let s = 0; s < order.length; s++) stepOf[order[s]] = s;
    const steps = new Set<number>();
    const open = [a, b].filter((node) => node !== REFERENCE).map((node) => stepOf[node]);
    while (open.length > 0) {
      const s = open.pop();
      if (s === undefined || steps.has(s)) continue;
      steps.add(s);
      for (let k = start[s]; k < start[s + 1]; k++) open.push(stepOf[neighbours[k]]);
    }
    const way = Int32Array.from(steps).sort();
    this.ways.set(key, way);
    return way;
  }

  /** Voltage between two nodes of the last solution. */
  between(a: number, b: number): number {
    return at(this.volts, a) - at(this.volts, b);
  }

  /** Current through an edge from its `a` to its `b` end in the last solution, amperes. */
  amps(edge: number): number {
    return this.siemens[edge] * this.between(this.plan.edgeA[edge], this.plan.edgeB[edge]) - this.norton[edge];
  }

  /** Forward and back substitution; `current` is destroyed. */
  private substitute(current: Float64Array, out: Float64Array): void {
    const { order, start, neighbours } = this.active;
    const { ratio, total } = this;
    for (let s = 0; s < order.length; s++) {
      const amps = current[order[s]];
      if (amps === 0) continue;
      for (let k = start[s]; k < start[s + 1]; k++) current[neighbours[k]] += ratio[k] * amps;
    }
    for (let s = order.length - 1; s >= 0; s--) {
      const node = order[s];
      let v = current[node] / total[node];
      for (let k = start[s]; k < start[s + 1]; k++) v += ratio[k] * out[neighbours[k]];
      out[node] = v;
    }
  }
}

function at(volts: Float64Array, node: number): number {
  return node === REFERENCE ? 0 : volts[node];
}

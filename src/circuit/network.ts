/**
 * DC solution of a network of conductances and Norton sources by star-mesh elimination.
 *
 * A node with conductances g1..gk to its neighbours and a leak to the reference is replaced by conductances
 * gi*gj/sum between them (Rosen, "A new network theorem", 1924: from memory). Only positive numbers are added, multiplied
 * and divided, so nothing cancels: a battery cable of 0.3 milliohm beside a leak of 1e-12 S keeps full accuracy, and a
 * floating island is an ordinary case. The same subtraction-free idea is Grassmann, Taksar and Heyman's for Markov
 * chains (1985, from memory).
 */
import { Elimination } from './elimination.ts';
import { extendPlan } from './extend.ts';
import { once } from './once.ts';
import { makePlan, type Plan, REFERENCE } from './plan.ts';
import { wayFrom, wayFromAll } from './ways.ts';

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
  bridges: Bridge[] = [];
  /** Counts the eliminations: what depends on conductances alone holds as long as this stands. */
  generation = 0;

  /** Edges that may carry a Norton current. */
  private sources: ArrayLike<number>;
  private sourceNodes: ArrayLike<number>;
  private watched: ArrayLike<number>;
  /** The plan with the bridges in it: they are eliminated like any edge, so that nothing cancels on an island either. */
  private active: Plan;
  private laid = '';
  private factors: Elimination;
  /** Conductances with those of the bridges behind them; the edges' own where there is none. */
  private all: Float64Array;
  private readonly scratch: Float64Array;
  private readonly probe: Float64Array;
  /** By step: the currents of the last solution after elimination, and the volts that they give. */
  private readonly driven: Float64Array;
  private readonly base: Float64Array;
  private readonly nodeVolts: Float64Array;
  private readonly added: { unit: Float64Array; amps: number }[] = [];
  private waySources: Int32Array;
  private wayWatched: Int32Array;
  private readonly isWatched: Uint8Array;
  /** Has every node its volts, or only those that are watched? */
  private whole = true;

  /**
   * @param sources edges that may carry a Norton current; all of them unless the owner knows better
   * @param watched nodes that are looked at after every solution; the others are worked out when they are asked for
   */
  constructor(plan: Plan, sources?: ArrayLike<number>, watched?: ArrayLike<number>) {
    this.plan = plan;
    this.active = plan;
    this.sources = sources ?? Array.from({ length: plan.edgeCount }, (_, e) => e);
    this.sourceNodes = sources === undefined ? plan.order : endsOf(plan)(sources);
    this.watched = watched ?? plan.order;
    this.siemens = new Float64Array(plan.edgeCount);
    this.norton = new Float64Array(plan.edgeCount);
    this.all = this.siemens;
    this.factors = new Elimination(plan);
    const perNode = (): Float64Array => new Float64Array(plan.nodeCount);
    [this.scratch, this.probe] = [perNode(), perNode()];
    [this.driven, this.base, this.nodeVolts] = [perNode(), perNode(), perNode()];
    this.isWatched = new Uint8Array(plan.nodeCount);
    this.waySources = wayFromAll(plan, this.sourceNodes);
    this.wayWatched = wayFromAll(plan, this.watched);
    this.seeWatched();
  }

  static of(nodeCount: number, edges: ReadonlyArray<readonly [number, number]>): Network {
    return new Network(makePlan(nodeCount, edges));
  }

  /** Eliminates with the present conductances, whether they moved or not. */
  factor(): void {
    this.generation++;
    this.layBridges();
    this.factors.run(this.all);
  }

  /** Eliminates again as far as bridges and these edges have moved. Needed after any of them did. */
  refactor(edges: readonly number[]): void {
    const isNew = this.layBridges();
    const { length } = this.siemens;
    const all = this.bridges.length === 0 ? edges : [...edges, ...this.bridges.map((_, i) => length + i)];
    if (isNew || this.generation === 0) this.factors.run(this.all);
    else if (!this.factors.rerun(this.all, all)) return;
    this.generation++;
  }

  /** Takes the bridges into the plan when they lie elsewhere than before. Did they? */
  private layBridges(): boolean {
    const ends = this.bridges.map((bridge): [number, number] => [bridge.a, bridge.b]);
    const laid = ends.join(' ');
    const isNew = laid !== this.laid;
    if (isNew) {
      this.laid = laid;
      this.active = ends.length === 0 ? this.plan : extendPlan(this.plan, ends);
      this.factors = new Elimination(this.active);
      this.all = ends.length === 0 ? this.siemens : new Float64Array(this.active.edgeCount);
      this.waySources = wayFromAll(this.active, this.sourceNodes);
      this.wayWatched = wayFromAll(this.active, this.watched);
      this.seeWatched();
    }
    if (this.all !== this.siemens) {
      this.all.set(this.siemens);
      this.bridges.forEach(({ siemens }, i) => {
        this.all[this.siemens.length + i] = siemens;
      });
    }
    return isNew;
  }

  private seeWatched(): void {
    this.isWatched.fill(0);
    for (const s of this.wayWatched) this.isWatched[this.plan.order[s]] = 1;
  }

  /** Solves for the present Norton currents with the last factors: the watched nodes now, the others when asked for. */
  solve(): void {
    const { norton, driven, sources, waySources } = this;
    const { start, later, edgeA, edgeB, place } = this.active;
    const { ratio } = this.factors;
    driven.fill(0);
    for (let k = 0; k < sources.length; k++) {
      const e = sources[k];
      const amps = norton[e];
      if (amps === 0) continue;
      if (edgeA[e] !== REFERENCE) driven[place[edgeA[e]]] += amps;
      if (edgeB[e] !== REFERENCE) driven[place[edgeB[e]]] -= amps;
    }
    for (let i = 0; i < waySources.length; i++) {
      const s = waySources[i];
      const amps = driven[s];
      if (amps === 0) continue;
      for (let k = start[s]; k < start[s + 1]; k++) driven[later[k]] += ratio[k] * amps;
    }
    this.added.length = 0;
    this.comeBack(this.wayWatched);
    this.whole = this.wayWatched.length === this.base.length;
  }

  /** Back substitution for some steps, which depend on each other only, and on those that have been. */
  private comeBack(steps: Int32Array): void {
    const { base, driven, nodeVolts } = this;
    const { total, ratio } = this.factors;
    const { start, later, order } = this.active;
    for (let i = steps.length - 1; i >= 0; i--) {
      const s = steps[i];
      let v = driven[s] / total[s];
      for (let k = start[s]; k < start[s + 1]; k++) v += ratio[k] * base[later[k]];
      base[s] = v;
      nodeVolts[order[s]] = v;
    }
  }

  /** Gives the nodes that are not watched the volts of the last solution. */
  private complete(): void {
    if (this.whole) return;
    this.whole = true;
    const { order } = this.active;
    const others = new Int32Array(order.length - this.wayWatched.length);
    let to = 0;
    for (let s = 0; s < order.length; s++) if (this.isWatched[order[s]] === 0) others[to++] = s;
    this.comeBack(others);
    for (const { unit, amps } of this.added) {
      for (const s of others) this.nodeVolts[order[s]] += unit[order[s]] * amps;
    }
  }

  /** Adds to the last solution what so many amperes do at the place of `unit`. */
  superpose(unit: Float64Array, amps: number): void {
    const { nodeVolts, wayWatched } = this;
    const { order } = this.active;
    if (this.whole) {
      for (let n = 0; n < nodeVolts.length; n++) nodeVolts[n] += unit[n] * amps;
      return;
    }
    for (let i = 0; i < wayWatched.length; i++) nodeVolts[order[wayWatched[i]]] += unit[order[wayWatched[i]]] * amps;
    this.added.push({ unit, amps });
  }

  /** Node voltages against the reference after `solve`, volts. */
  get volts(): Float64Array {
    this.complete();
    return this.nodeVolts;
  }

  /** Node voltages for one ampere driven into `a` and out of `b`, sources at rest. */
  unit(a: number, b: number, out: Float64Array = new Float64Array(this.plan.nodeCount)): Float64Array {
    const { scratch, probe } = this;
    const { ratio, total } = this.factors;
    const { start, later, place, order } = this.active;
    scratch.fill(0);
    if (a !== REFERENCE) scratch[place[a]] += 1;
    if (b !== REFERENCE) scratch[place[b]] -= 1;
    for (let s = 0; s < total.length; s++) {
      const amps = scratch[s];
      if (amps === 0) continue;
      for (let k = start[s]; k < start[s + 1]; k++) scratch[later[k]] += ratio[k] * amps;
    }
    for (let s = total.length - 1; s >= 0; s--) {
      let v = scratch[s] / total[s];
      for (let k = start[s]; k < start[s + 1]; k++) v += ratio[k] * probe[later[k]];
      probe[s] = v;
      out[order[s]] = v;
    }
    return out;
  }

  /**
   * Resistance between two nodes with all sources at rest (Thevenin), ohms. Only the nodes on the way from the two to
   * the end of the elimination take part; they are few.
   */
  resistance(a: number, b: number): number {
    const { start, later, place } = this.active;
    const { scratch, probe } = this;
    const { ratio, total } = this.factors;
    const steps = wayFrom(this.active, a, b);
    for (let i = 0; i < steps.length; i++) scratch[steps[i]] = 0;
    if (a !== REFERENCE) scratch[place[a]] += 1;
    if (b !== REFERENCE) scratch[place[b]] -= 1;
    for (let i = 0; i < steps.length; i++) {
      const s = steps[i];
      const amps = scratch[s];
      if (amps === 0) continue;
      for (let k = start[s]; k < start[s + 1]; k++) scratch[later[k]] += ratio[k] * amps;
    }
    for (let i = steps.length - 1; i >= 0; i--) {
      const s = steps[i];
      let v = scratch[s] / total[s];
      for (let k = start[s]; k < start[s + 1]; k++) v += ratio[k] * probe[later[k]];
      probe[s] = v;
    }
    return (a === REFERENCE ? 0 : probe[place[a]]) - (b === REFERENCE ? 0 : probe[place[b]]);
  }

  /** Voltage between two nodes of the last solution. */
  between(a: number, b: number): number {
    if (!this.whole && (this.isUnseen(a) || this.isUnseen(b))) this.complete();
    return at(this.nodeVolts, a) - at(this.nodeVolts, b);
  }

  private isUnseen(node: number): boolean {
    return node !== REFERENCE && this.isWatched[node] === 0;
  }

  /** Current through an edge from its `a` to its `b` end in the last solution, amperes. */
  amps(edge: number): number {
    return this.siemens[edge] * this.between(this.plan.edgeA[edge], this.plan.edgeB[edge]) - this.norton[edge];
  }
}

function at(volts: Float64Array, node: number): number {
  return node === REFERENCE ? 0 : volts[node];
}

/** Nodes at which edges of a plan end; the same list for the same edges, so that their way is sought once. */
const endsOf = once((plan: Plan) =>
  once((edges: ArrayLike<number>) =>
    Int32Array.from([...Array.from(edges, (e) => plan.edgeA[e]), ...Array.from(edges, (e) => plan.edgeB[e])]),
  ),
);

/** Pours a machine's state and its changes into the network and solves it, alternator and battery included. */
import { type Bridge, Network } from '../circuit/index.ts';
import type { Change, Law } from '../parts/index.ts';
import { chargeAt, restVolts } from './battery.ts';
import { type Groups, groupsOf } from './groups.ts';
import type { View } from './guard.ts';
import { chargeQuantity, type Model, type ModelElement, nodeOf } from './model.ts';
import type { MachineState } from './state.ts';
import { wireChains } from './wire-chain.ts';

/** Does the battery give current, rest, or take charge? Its law differs (book, section 9). */
type BatteryMode = 'gives' | 'rests' | 'takes';

interface Modified {
  seriesOhms: number;
  open: boolean;
  closed: boolean;
  /** Times its own ohms. */
  drift: number;
  ohms?: number;
  restVolts?: number;
  setVolts?: number;
  limitAmps?: number;
}

const SOUND: Modified = { seriesOhms: 0, open: false, closed: false, drift: 1 };
/** A sender never quite reaches nothing. */
const LEAST_OHMS = 0.01;
const BATTERY_ROUNDS = 8;

export class Electrics {
  readonly model: Model;
  readonly network: Network;
  /** Ohms readings are made with filaments cold and motors standing (book, section 9). */
  cold = false;
  private readonly modified = new Map<number, Modified>();
  private readonly groups: Groups;
  /** For which of cold and warm the fixed ones were poured last; null after a change. */
  private fixedFor: boolean | null = null;
  /** For which states and controls the switched ones were poured last. */
  private readonly regionsPoured: Int16Array;
  private readonly controlsPoured: string[] = [];
  private batteryMode: BatteryMode[] = [];
  private stale = true;
  /** Edges whose conductance has changed since the last elimination. */
  private readonly moved: number[] = [];
  /** What one ampere of each alternator does, as long as no conductance moves. */
  private readonly units: Float64Array[];
  private unitsOf = -1;

  constructor(model: Model) {
    this.model = model;
    this.groups = groupsOf(model);
    this.network = new Network(model.plan, this.groups.sources, this.groups.watched);
    this.regionsPoured = new Int16Array(model.regions.length);
    this.units = this.groups.alternators.map(() => new Float64Array(model.points.length));
    this.batteryMode = this.groups.batteries.map(() => 'gives');
  }

  /** Replaces all changes: faults and what hands have done. */
  setChanges(changes: readonly Change[]): void {
    this.modified.clear();
    const { cores, bridges: touches, told } = wireChains(this.model, changes);
    const bridges: Bridge[] = [...touches];
    for (const [element, ohms] of cores) this.modified.set(element, { ...SOUND, open: ohms === null, ohms: ohms ?? 0 });
    for (const change of changes) if (!told.has(change)) this.apply(change, bridges);
    this.network.bridges = bridges;
    this.fixedFor = null;
    this.stale = true;
  }

  private entry(element: string): Modified {
    const index = this.model.elementIndex.get(element);
    if (index === undefined) throw new RangeError(`no such element in the book: ${element}`);
    const known = this.modified.get(index) ?? { ...SOUND };
    this.modified.set(index, known);
    return known;
  }

  private apply(change: Change, bridges: Bridge[]): void {
    switch (change.kind) {
      case 'series': {
        const entry = this.entry(change.element);
        if (change.ohms === null) entry.open = true;
        else entry.seriesOhms += change.ohms;
        return;
      }
      case 'ohms':
        this.entry(change.element).ohms = change.ohms;
        return;
      case 'drift':
        this.entry(change.element).drift *= change.factor;
        return;
      case 'closed':
        this.entry(change.element).closed = true;
        return;
      case 'bridge':
        bridges.push({ a: nodeOf(this.model, change.a), b: nodeOf(this.model, change.b), siemens: 1 / change.ohms });
        return;
      case 'battery': {
        const entry = this.entry(change.element);
        if (change.ohms !== undefined) entry.ohms = change.ohms;
        if (change.openVolts !== undefined) entry.restVolts = change.openVolts;
        return;
      }
      case 'alternator': {
        const entry = this.entry(change.element);
        if (change.setVolts !== undefined) entry.setVolts = change.setVolts;
        if (change.limitAmps !== undefined) entry.limitAmps = change.limitAmps;
        return;
      }
      case 'chafe':
        return; // Told with its wire.
      case 'stuck':
      case 'quantity':
        return; // States and quantities, not the network: the world sees to them.
    }
  }

  /** Settles the network for this state. Returns node volts; `view` answers guards until the next call. */
  solve(state: MachineState, view: View): void {
    for (let round = 0; round < BATTERY_ROUNDS; round++) {
      this.pour(state, view);
      if (this.stale) this.network.refactor(this.moved);
      this.stale = false;
      this.moved.length = 0;
      this.network.solve();
      this.regulate(view);
      if (!this.batteriesMoved(state)) return;
    }
  }

  /** Current through an element from its `a` to its `b` end, amperes. */
  amps(element: number): number {
    return this.network.amps(element);
  }

  /** Plain resistors stand still until a change or cold filaments are asked for, contacts until their state changes. */
  private pour(state: MachineState, view: View): void {
    const { fixed, switched, moving } = this.groups;
    const isAnew = this.fixedFor !== this.cold;
    this.fixedFor = this.cold;
    this.pourSwitched(state, view);
    if (isAnew) {
      this.pourList(fixed, state, view);
      this.pourList(switched, state, view);
    }
    this.pourList(moving, state, view);
    this.pourExcitations(view);
  }

  /** Contacts of the states and controls that stand otherwise than when they were poured last. */
  private pourSwitched(state: MachineState, view: View): void {
    const { regionsPoured, controlsPoured } = this;
    const { byRegion, byControl } = this.groups;
    const { regions, controls } = state;
    for (let r = 0; r < regions.length; r++) {
      if (regionsPoured[r] === regions[r]) continue;
      regionsPoured[r] = regions[r];
      this.pourList(byRegion[r], state, view);
    }
    for (let c = 0; c < controls.length; c++) {
      if (controlsPoured[c] === controls[c]) continue;
      controlsPoured[c] = controls[c];
      this.pourList(byControl[c], state, view);
    }
  }

  private pourList(list: readonly number[], state: MachineState, view: View): void {
    const { elements } = this.model;
    for (const e of list) {
      const element = elements[e];
      const changed = this.modified.get(e) ?? SOUND;
      const on = changed.closed || this.conducts(e, view);
      const ohms = changed.open ? null : this.ohmsOf(e, element, on, changed, state);
      const g = ohms === null ? 0 : 1 / (ohms + changed.seriesOhms);
      this.put(e, g, this.voltsOf(e, element.law, on, changed, state) * g);
    }
  }

  /** Does the element's own condition hold? An excitation terminal goes with the output that it belongs to. */
  private conducts(element: number, view: View): boolean {
    const { law } = this.model.elements[element];
    const leader = law.kind === 'excitation' ? (this.model.elementIndex.get(law.of) ?? element) : element;
    const test = this.groups.tests[leader];
    return test === null || test(view);
  }

  private put(edge: number, siemens: number, norton: number): void {
    if (this.network.siemens[edge] !== siemens) {
      this.network.siemens[edge] = siemens;
      this.moved.push(edge);
      this.stale = true;
    }
    this.network.norton[edge] = norton;
  }

  /** Ohms of an element before series faults; null for an open circuit. */
  private ohmsOf(
    index: number,
    element: ModelElement,
    on: boolean,
    changed: Modified,
    state: MachineState,
  ): number | null {
    const { law } = element;
    switch (law.kind) {
      case 'resistance':
        return on ? (changed.ohms ?? (this.cold ? law.coldOhms : undefined) ?? law.ohms) * changed.drift : null;
      case 'variable':
        return Math.max(
          LEAST_OHMS,
          (changed.ohms ?? law.offset + law.scale * this.quantity(state, law.quantity)) * changed.drift,
        );
      case 'contact':
        return on ? (changed.ohms ?? law.ohms) : (law.openOhms ?? null);
      case 'source':
        return on ? law.ohms : null;
      case 'motor':
        return changed.ohms ?? law.ohms;
      case 'battery':
        return { gives: changed.ohms ?? law.ohms, rests: null, takes: law.chargeOhms }[this.modeOf(index)];
      case 'alternator':
        return null;
      case 'excitation':
        return on ? null : law.ohms;
    }
  }

  private voltsOf(index: number, law: Law, on: boolean, changed: Modified, state: MachineState): number {
    switch (law.kind) {
      case 'source':
        return on ? law.volts : 0;
      case 'motor':
        return on ? law.voltsPerRpm * Math.min(this.quantity(state, 'rpm'), law.freeRpm) : 0;
      case 'battery':
        return this.modeOf(index) === 'takes' ? law.chargeVolts : this.restVolts(index, changed, state);
      default:
        return 0;
    }
  }

  private restVolts(index: number, changed: Modified, state: MachineState): number {
    const { law, owner } = this.model.elements[index];
    if (law.kind !== 'battery') return 0;
    const used = this.quantity(state, chargeQuantity(owner)) / law.capacityAh;
    return restVolts(chargeAt(changed.restVolts ?? law.openVolts) - used);
  }

  private modeOf(index: number): BatteryMode {
    return this.batteryMode[this.groups.batteries.indexOf(index)];
  }

  private quantity(state: MachineState, name: string): number {
    return state.quantities[this.model.quantityIndex.get(name) ?? 0];
  }

  /** While it charges, the excitation terminal stands a little below the output. */
  private pourExcitations(view: View): void {
    this.groups.excitations.forEach((element, k) => {
      const { law } = this.model.elements[element];
      const on = this.conducts(element, view) && !this.modified.get(element)?.open;
      const g = on ? 1 / EXCITATION_OHMS : 0;
      this.put(this.model.elements.length + k, g, law.kind === 'excitation' ? -law.belowOutputVolts * g : 0);
    });
  }

  /** Finds the alternator's current at which its sense point stands at the set volts, within its limits. */
  private regulate(view: View): void {
    this.groups.alternators.forEach((e, k) => {
      const { law, a, b } = this.model.elements[e];
      const changed = this.modified.get(e) ?? SOUND;
      if (law.kind !== 'alternator' || changed.open || !this.conducts(e, view)) return;
      const sense = nodeOf(this.model, law.sense);
      const { network } = this;
      const unit = this.unitOf(k);
      const rise = (node: number) => (node < 0 ? 0 : unit[node]) - (b < 0 ? 0 : unit[b]);
      const wanted = ((changed.setVolts ?? law.setVolts) - network.between(sense, b)) / Math.max(rise(sense), 1e-9);
      const ceiling = (law.ceilingVolts - network.between(a, b)) / rise(a);
      const amps = Math.max(0, Math.min(wanted, ceiling, changed.limitAmps ?? law.limitAmps));
      network.norton[e] = amps;
      network.superpose(unit, amps);
    });
  }

  private unitOf(alternator: number): Float64Array {
    const { network, units } = this;
    if (this.unitsOf !== network.generation) {
      this.unitsOf = network.generation;
      this.groups.alternators.forEach((e, k) => {
        const { a: from, b: to } = this.model.elements[e];
        network.unit(from, to, units[k]);
      });
    }
    return units[alternator];
  }

  private batteriesMoved(state: MachineState): boolean {
    let moved = false;
    this.groups.batteries.forEach((element, k) => {
      const { law, a, b } = this.model.elements[element];
      if (law.kind !== 'battery') return;
      const changed = this.modified.get(element) ?? SOUND;
      const post = this.network.between(a, b);
      const rest = this.restVolts(element, changed, state);
      const mode: BatteryMode = post > law.chargeVolts ? 'takes' : post > rest + 1e-9 ? 'rests' : 'gives';
      // In its present mode a source pulls the posts past its own threshold; only a real crossing counts.
      if (mode !== this.batteryMode[k] && !(this.batteryMode[k] === 'gives' && post <= rest + 1e-9)) {
        this.batteryMode[k] = mode;
        moved = true;
      }
    });
    return moved;
  }
}

/** Ohms between output and excitation terminal while charging: the three small diodes, about 0.1 V at their current. */
const EXCITATION_OHMS = 0.01;

/**
 * Which faults could change anything while the complaint is tried. The sound machine is followed through its states;
 * in each, a fault's effect on the network is one rank-1 correction, and where that flips no guard that stands there
 * and nothing that is noticed, the machine with the fault takes the very same course.
 */
import { type JobSpec, Rig, type Symptom, tryOut } from '../job/index.ts';
import { observablesOf } from '../job/observables.ts';
import { type Model, nodeOf, type Test, type View, type World } from '../machine/index.ts';
import type { Change } from '../parts/index.ts';
import { hiddenControls, type SuspectFamily } from './suspects.ts';

/** Short enough that no relay moves unseen, ms. */
const SLICE_MS = 2;
/** A change of starter current by more than this share changes the speed that it is heard by. */
const SPEED_SHARE = 0.02;

/** A rank-1 correction: node volts per ampere between two nodes, and the amperes that the fault takes there. */
interface Correction {
  unit: Float64Array;
  amps: number;
  /** 1 / (1/dg + z): how much the fault changes resistances seen elsewhere. */
  siemens: number;
  element: number;
  elementSiemens: number;
}

export class Traffic {
  private readonly model: Model;
  private readonly job: JobSpec;
  private readonly soundCodes: string[];
  private readonly states: World[] = [];
  private readonly motor: number;

  constructor(model: Model, job: JobSpec) {
    this.model = model;
    this.job = job;
    this.motor = model.elementIndex.get(`${model.book.engine.starter}.motor`) ?? 0;
    // Fuses found blown and switches found off are what is asked for: the course is followed with everything whole.
    const { regions: _, ...whole } = job.arrival;
    const usual = Object.fromEntries(hiddenControls(model.book).map((c) => [c.id, c.initial]));
    const rig = Rig.arriving(model, [], { ...whole, controls: { ...whole.controls, ...usual } });
    this.soundCodes = job.complaint.flatMap((symptom) => tryOut(rig, symptom).codes);
    this.follow(rig);
  }

  /** Could this family, at its worst or at a milder degree, change the course of the machine? */
  matters(family: SuspectFamily, ohms = family.severities[family.severities.length - 1] ?? 0): boolean {
    if (family.controls !== undefined) return true;
    const changes = family.faults(ohms).flatMap((fault) => fault.changes);
    return changes.some((change) => this.states.some((world) => this.alters(world, change)));
  }

  /** Is everything noticed as on a sound machine? */
  likeSound(codesOf: (symptom: Symptom) => readonly string[]): boolean {
    return this.job.complaint.flatMap(codesOf).join() === this.soundCodes.join();
  }

  private follow(rig: Rig): void {
    const known = new Set<string>();
    for (const symptom of this.job.complaint) {
      const keep = ({ world }: Rig): boolean => {
        const key = `${world.state.regions.join()} ${world.state.controls.join()}`;
        if (!known.has(key)) this.states.push(world.copy());
        known.add(key);
        return false;
      };
      tryOut(rig, symptom, keep, SLICE_MS);
    }
  }

  private alters(world: World, change: Change): boolean {
    const correction = this.correctionFor(world, change);
    // What is no rank-1 correction is always tried.
    if (correction === null) return true;
    if (correction.amps === 0 && correction.siemens === 0) return false;
    const view = correctedView(world, correction);
    const motor = world.amps(this.motor);
    if (Math.abs(view.amps(this.motor) - motor) > SPEED_SHARE * Math.max(1, Math.abs(motor))) return true;
    const { instant, delayed } = world.standing();
    const flips = ({ test }: { test: Test }): boolean => test(view) !== test(world);
    if (instant.some(flips) || delayed.some(flips)) return true;
    return observablesOf(this.model).some(({ test }) => test(view) !== test(world));
  }

  private correctionFor(world: World, change: Change): Correction | null {
    const { network } = world.electrics;
    switch (change.kind) {
      case 'series':
      case 'ohms': {
        const e = this.model.elementIndex.get(change.element) ?? 0;
        const g = network.siemens[e];
        if (g === 0) return { unit: network.volts, amps: 0, siemens: 0, element: e, elementSiemens: 0 };
        const next = change.kind === 'ohms' ? 1 / change.ohms : change.ohms === null ? 0 : 1 / (1 / g + change.ohms);
        const { a, b } = this.model.elements[e];
        // Its Norton current shrinks with its conductance: the same share is taken away.
        return correct(world, a, b, next - g, (network.norton[e] * (next - g)) / g, e, next);
      }
      case 'bridge':
        return correct(world, nodeOf(this.model, change.a), nodeOf(this.model, change.b), 1 / change.ohms, 0, -1, 0);
      case 'chafe': {
        // Nearly so: a touch along the wire is as good as one at its end.
        const end = (id: string): number => this.model.elements[this.model.elementIndex.get(id) ?? 0].a;
        const to = change.to.startsWith('W:') ? end(change.to) : nodeOf(this.model, change.to);
        return correct(world, end(`W:${change.wire}`), to, 1 / change.ohms, 0, -1, 0);
      }
      default:
        return null;
    }
  }
}

/** Sherman and Morrison: adding `dg` and a source of `source` amperes (into a) between two nodes. */
function correct(
  world: World,
  a: number,
  b: number,
  dg: number,
  source: number,
  element: number,
  elementSiemens: number,
): Correction {
  const { network } = world.electrics;
  const unit = network.unit(a, b);
  const z = at(unit, a) - at(unit, b);
  const denominator = 1 + dg * z;
  // Next to nothing left: the only path is cut. The open voltage then stands across it.
  const safe = Math.abs(denominator) < 1e-9 ? 1e-9 : denominator;
  const v = network.between(a, b);
  return { unit, amps: (dg * v - source) / safe, siemens: dg / safe, element, elementSiemens };
}

const at = (volts: Float64Array, node: number): number => (node < 0 ? 0 : volts[node]);

function correctedView(world: World, c: Correction): View {
  const { network } = world.electrics;
  const { elements } = world.model;
  const volts = (a: number, b: number) => network.between(a, b) - c.amps * (at(c.unit, a) - at(c.unit, b));
  return {
    volts,
    amps: (e) => {
      if (e !== c.element) return network.siemens[e] * volts(elements[e].a, elements[e].b) - network.norton[e];
      const share = network.siemens[e] === 0 ? 0 : c.elementSiemens / network.siemens[e];
      return c.elementSiemens * volts(elements[e].a, elements[e].b) - network.norton[e] * share;
    },
    ohms: (a, b) => {
      const across = at(c.unit, a) - at(c.unit, b);
      return world.ohms(a, b) - c.siemens * across * across;
    },
    region: (r) => world.region(r),
    control: (i) => world.control(i),
    quantity: (i) => world.quantity(i),
  };
}

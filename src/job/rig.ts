/** A machine on the shop floor: a world with faults in it, to which hands do things. The real one and every suspect's. */
import {
  isVolts,
  LEAD_OHMS,
  lampLoad,
  MinMax,
  meterLoad,
  QUANTITY_OF,
  type Reading,
  readLamp,
  readMeter,
  readOpenJack,
  SHUNT_OHMS,
  show,
} from '../instruments/index.ts';
import { LiveMachine, type Model, World } from '../machine/index.ts';
import type { Change, Fault } from '../parts/index.ts';
import type { Bench } from './bench.ts';
import { canonical } from './canonical.ts';
import { answeringControllers, NO_ANSWER } from './cluster.ts';
import { Ear, noticed } from './observables.ts';
import type { JobSpec } from './spec.ts';

/** A reading without a stated moment is taken this long after the last control moved, ms (design rule of the project). */
export const READING_AFTER_MS = 500;
/** Span over which an unsteady display is judged, ms. */
const WATCH_MS = 1000;
/** A display that moves by more than this much of its largest value over the span is unsteady. */
const UNSTEADY_SHARE = 0.05;

export interface Display {
  text: string;
  unit: string;
  beep?: boolean;
  live?: boolean;
  /** Least and greatest text over a second, where the display does not stand still. */
  from?: string;
  to?: string;
  /** Least and greatest text since the meter was told to keep them. */
  least?: string;
  most?: string;
}

/** What was seen and heard during an action: the display, and codes of observations in a fixed order. */
export interface Seen {
  display?: Display;
  /** Ideal value at the jacks, base units; null for overload. Not in the log: replay gives it again. */
  value?: number | null;
  codes: string[];
  /** Amperes through the meter's current jack when its display was looked at, whatever the dial says. Not in the log. */
  jackAmps?: number;
}

/** What one action does to a machine, in order. */
export type Step =
  | { hands: Bench }
  | { cure: string; target: string }
  | { pass: number }
  | { control: string; value: string }
  | { clearCodes: true }
  | { readCodes: true }
  /** Look at the display and listen from this zone; anything heard since the first step counts. */
  | { notice: string; bench: Bench }
  /** Look and listen from this zone, without reading the display. */
  | { listen: string };

export class Rig {
  world: World;
  faults: Fault[];
  /** Does it judge whether a display stands still? Suspects' machines are not asked. */
  watches = true;
  private kept: { bench: Bench; key: string; record: MinMax } | null = null;
  private swapped: readonly [string, string][] = [];
  private hands: Change[] = [];

  private constructor(world: World, faults: readonly Fault[]) {
    this.world = world;
    this.faults = [...faults];
  }

  /** A machine as it is handed over: with its faults and the state that it arrives in. */
  static arriving(model: Model, faults: readonly Fault[], arrival: JobSpec['arrival']): Rig {
    const rig = new Rig(
      new World(
        model,
        faults.flatMap((f) => f.changes),
      ),
      faults,
    );
    rig.arrive(arrival);
    return rig;
  }

  private arrive(arrival: JobSpec['arrival']): void {
    for (const [control, value] of Object.entries(arrival.controls ?? {})) this.world.setControl(control, value);
    for (const [quantity, value] of Object.entries(arrival.quantities ?? {})) this.world.setQuantity(quantity, value);
    for (const [region, state] of Object.entries(arrival.regions ?? {})) this.world.setRegion(region, state);
    this.world.settle();
  }

  /** From here on the machine's state is kept by the statechart; what it does is the same. */
  goLive(): void {
    this.world = LiveMachine.of(this.world);
  }

  copy(): Rig {
    const copy = new Rig(this.world.copy(), this.faults);
    copy.watches = this.watches;
    copy.swapped = this.swapped;
    copy.hands = [...this.hands];
    return copy;
  }

  /** Runs steps in order; ends early where `stop` says so after one. */
  run(steps: readonly Step[], stop?: (soFar: Seen) => boolean): Seen {
    const ear = new Ear(this.world);
    const seen: Seen = { codes: [] };
    for (const step of steps) {
      this.step(step, ear, seen);
      this.keep();
      if (stop?.(seen)) break;
    }
    this.showKept(seen);
    if (ear.engineStopped()) seen.codes = [...new Set([...seen.codes, 'stops'])].sort();
    return seen;
  }

  private step(step: Step, ear: Ear, seen: Seen): void {
    if ('hands' in step) this.setHands(step.hands);
    else if ('cure' in step) this.cure(step.cure, step.target);
    else if ('pass' in step) this.pass(step.pass, ear);
    else if ('control' in step) this.world.setControl(step.control, step.value);
    else if ('clearCodes' in step) this.clearCodes(seen);
    else if ('readCodes' in step) this.readCodes(seen);
    else if ('listen' in step) this.gather(step.listen, ear, seen);
    else {
      if (this.kept !== null) this.kept.bench = step.bench;
      Object.assign(seen, this.display(step.bench) ?? {});
      this.gather(step.notice, ear, seen);
    }
    ear.listen();
  }

  private pass(ms: number, ear: Ear): void {
    this.world.advance(ms, () => {
      ear.listen();
      this.keep();
    });
  }

  /** The meter remembers from where a button was pressed, or its leads were last moved. */
  private remember(bench: Bench): void {
    const { leads, dial, redJack, minMax, instrument } = bench;
    if (!minMax || !this.watches || leads.red === null || leads.black === null) {
      this.kept = null;
      return;
    }
    const key = canonical([leads, dial, redJack, instrument]);
    if (this.kept?.key === key) this.kept.bench = bench;
    else this.kept = { bench, key, record: new MinMax() };
  }

  private keep(): void {
    if (this.kept === null) return;
    const value = readBench(this.world, this.kept.bench)?.value ?? null;
    if (value !== null) this.kept.record.take(this.world.state.timeMs, value);
  }

  private showKept(seen: Seen): void {
    if (this.kept === null || seen.display === undefined) return;
    const { bench, record } = this.kept;
    const { dial } = bench;
    if (dial === 'off' || record.least === null || record.most === null) return;
    const text = (value: number): string => {
      const { text, unit } = show(QUANTITY_OF[dial], value - (bench.zero ?? 0), bench.range ?? undefined);
      return `${text} ${unit}`;
    };
    seen.display.least = text(record.least);
    seen.display.most = text(record.most);
  }

  private setHands(bench: Bench): void {
    this.remember(bench);
    const hands = handChanges(this.world.model, bench);
    const same = this.swapped === bench.exchanged && canonical(hands) === canonical(this.hands);
    this.hands = hands;
    this.swapped = bench.exchanged;
    // A lead that loads nothing changes nothing.
    if (!same) this.refresh();
  }

  private refresh(): void {
    const own = this.faults.flatMap((f) => f.changes.map((change) => moveWithRelay(change, this.swapped)));
    this.world.setChanges([...own, ...this.hands]);
  }

  private cure(verb: string, target: string): void {
    this.faults = this.faults.filter((f) => !(standsAt(f.at, this.swapped) === target && f.cures.includes(verb)));
    const { model } = this.world;
    if (verb === 'replace' || verb === 'fuse') this.renew(target);
    if (verb === 'charge') this.faults = this.faults.map((f) => (f.at === target ? charged(f) : f));
    if (verb === 'charge' || (verb === 'replace' && model.quantityIndex.has(`${target}.usedAh`))) {
      this.world.setQuantity(`${target}.usedAh`, 0);
    }
    this.refresh();
  }

  /** A new part starts in its first state: a fuse whole, a relay at rest. */
  private renew(target: string): void {
    const region = this.world.model.regions.find((r) => r.id === target);
    if (region !== undefined) this.world.setRegion(region.id, region.initial);
  }

  /** Only controllers that answer at the cluster are cleared; the others keep what they have stored. */
  private clearCodes(seen: Seen): void {
    const answering = answeringControllers(this.world);
    if (answering === null) seen.codes = [...seen.codes, NO_ANSWER];
    for (const { codes } of answering ?? []) for (const { code } of codes) this.world.setRegion(code, 'clear');
    this.world.settle();
  }

  private readCodes(seen: Seen): void {
    const answering = answeringControllers(this.world);
    const stored = answering?.flatMap(({ codes }) => codes.filter((c) => this.world.stateOf(c.code) === 'stored'));
    seen.codes = [...seen.codes, ...(stored?.map((c) => `code:${c.code}`) ?? [NO_ANSWER])].sort();
  }

  private gather(zone: string, ear: Ear, seen: Seen): void {
    ear.listen();
    seen.codes = [...new Set([...seen.codes, ...noticed(this.world, zone), ...ear.heard(zone)])].sort();
  }

  /** What the instrument in hand shows with its leads where they are; null while a lead hangs loose. */
  private display(bench: Bench): Pick<Seen, 'display' | 'value' | 'jackAmps'> | null {
    const { red, black } = bench.leads;
    if (red === null || black === null) return null;
    if (bench.instrument === 'lamp') return { display: { text: readLamp(this.world, red, black), unit: '' } };
    const fn = bench.dial;
    if (fn === 'off') return null;
    const first = readBench(this.world, bench);
    if (first === null) return null;
    const spread = !hangsOpen(bench) && isVolts(fn) && this.watches ? this.watch(bench) : null;
    const display: Display = { text: first.text, unit: first.unit };
    if (first.beep !== undefined) display.beep = first.beep;
    if (first.live) display.live = true;
    if (spread !== null) Object.assign(display, spread);
    const jackAmps = shunts(bench) ? { jackAmps: this.world.voltsBetween(red, black) / SHUNT_OHMS } : {};
    return { display, value: first.value, ...jackAmps };
  }

  /** Does the display stand still over the next second? Time passes on a copy, so that a reading costs none. */
  private watch(bench: Bench): { from: string; to: string } | null {
    const copy = this.world.copy();
    let least: Reading | null = null;
    let most: Reading | null = null;
    copy.advance(WATCH_MS, (world) => {
      const now = readBench(world, bench);
      if (now === null) return;
      if (least === null || (now.value ?? 0) < (least.value ?? 0)) least = now;
      if (most === null || (now.value ?? 0) > (most.value ?? 0)) most = now;
    });
    return spreadOf(least, most);
  }
}

/** A charged battery rests as full as the book's; what ails it otherwise stays. */
function charged(fault: Fault): Fault {
  const changes = fault.changes.map((change): Change => {
    if (change.kind !== 'battery') return change;
    const { openVolts: _, ...rest } = change;
    return rest;
  });
  return { ...fault, changes };
}

function spreadOf(least: Reading | null, most: Reading | null): { from: string; to: string } | null {
  if (least === null || most === null) return null;
  const [low, high] = [least.value ?? 0, most.value ?? 0];
  const size = Math.max(Math.abs(low), Math.abs(high));
  return high - low > 0.2 + UNSTEADY_SHARE * size ? { from: least.text, to: most.text } : null;
}

/** With the red lead in the current jack the meter is a shunt for the circuit, whatever the dial says. */
export const shunts = ({ instrument, redJack, jackFuseBlown }: Bench): boolean =>
  instrument === 'meter' && redJack === 'amps' && !jackFuseBlown;

/** The display follows the dial: does the jack that it asks have no lead in it, or no fuse behind it? */
const hangsOpen = (bench: Bench): boolean => (bench.dial === 'amps' ? !shunts(bench) : bench.redJack === 'amps');

/** What the meter shows as it is set now; null while it is off or a lead hangs loose. */
export function readBench(world: World, bench: Bench): Reading | null {
  const { red, black } = bench.leads;
  if (red === null || black === null || bench.dial === 'off') return null;
  if (hangsOpen(bench)) return readOpenJack(bench.dial);
  const { range, zero } = bench;
  return readMeter(world, bench.dial, red, black, { leadOhms: LEAD_OHMS, range, zero });
}

/** Everything that hands have done, as changes of the network. */
export function handChanges(model: Model, bench: Bench): Change[] {
  const open = (element: string): Change => ({ kind: 'series', element, ohms: null });
  const { book } = model;
  const changes: Change[] = [];
  for (const id of bench.unplugged) {
    const connector = book.connectors.find((c) => c.id === id);
    for (const pin of connector?.pins ?? []) changes.push(open(`X:${id}.${pin.pin}`));
  }
  for (const end of bench.lifted) changes.push(open(`L:${end}`));
  for (const part of bench.pulled) {
    for (const element of model.elements) if (element.owner === part) changes.push(open(element.id));
  }
  const { red, black } = bench.leads;
  if (red === null || black === null) return changes;
  if (bench.instrument === 'lamp') return [...changes, ...lampLoad(red, black)];
  // A blown fuse leaves the current jack open; the dial's own load lies at the volts jack.
  if (bench.redJack === 'amps') return shunts(bench) ? [...changes, ...meterLoad('amps', red, black)] : changes;
  return bench.dial === 'amps' ? changes : [...changes, ...meterLoad(bench.dial, red, black)];
}

/** A fault inside a relay goes with the relay through every socket that it has stood in, in that order. */
function moveWithRelay(change: Change, swapped: readonly [string, string][]): Change {
  if ('element' in change) return { ...change, element: standsAt(change.element, swapped) };
  return change.kind === 'stuck' ? { ...change, region: standsAt(change.region, swapped) } : change;
}

/** Where a relay of the book, or something inside it, stands now. */
function standsAt(id: string, swapped: readonly [string, string][]): string {
  const isIn = (now: string, relay: string) => now === relay || now.startsWith(`${relay}.`);
  return swapped.reduce((now, [one, other]) => {
    if (isIn(now, one)) return other + now.slice(one.length);
    return isIn(now, other) ? one + now.slice(other.length) : now;
  }, id);
}

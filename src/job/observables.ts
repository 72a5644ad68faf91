/** What eyes and ears get from the machine without an instrument, as codes of the book. */
import { once } from '../circuit/index.ts';
import { compileGuard, type Model, type ObservableSpec, type Test, type World } from '../machine/index.ts';
import type { PartSpec } from '../parts/index.ts';
import { codeLine } from './cluster.ts';

export interface Observable {
  spec: ObservableSpec;
  test: Test;
  /** Holds between two flashes. */
  between?: Test;
}

/** How finely time is cut while the next flash is waited for, and how long at most, ms. */
const FLASH_STEP_MS = 50;
const FLASH_WAIT_MS = 1000;

export const observablesOf = once((model: Model): Observable[] =>
  [...model.book.observables, ...codeLine(model)].map((spec): Observable => {
    const observable = { spec, test: compileGuard(model, spec.when) };
    return spec.between === undefined ? observable : { ...observable, between: compileGuard(model, spec.between) };
  }),
);

/** Codes of all that could be noticed now from a zone, in the book's order, then the codes on the cluster. */
export function noticed(world: World, zone: string): string[] {
  return observablesOf(world.model)
    .filter(({ spec }) => spec.zones.length === 0 || spec.zones.includes(zone))
    .filter((observable) => isNoticed(world, observable))
    .map(({ spec }) => spec.code);
}

/** An eye waits for the next flash. */
function isNoticed(world: World, { test, between }: Observable): boolean {
  return test(world) || (between?.(world) === true && test(nextFlash(world, between)));
}

/** The machine as it will be in the next flash, where it is between two. */
function nextFlash(world: World, between: Test): World {
  const copy = world.copy();
  for (let ms = 0; ms < FLASH_WAIT_MS && between(copy); ms += FLASH_STEP_MS) copy.advance(FLASH_STEP_MS);
  return copy;
}

/** The machine with its flashing lamps lit: now, or as it will be in a moment. */
export function inTheFlash(world: World): World {
  const waits = observablesOf(world.model).find(({ between }) => between?.(world) === true);
  return waits?.between === undefined ? world : nextFlash(world, waits.between);
}

/** Parts whose own region is something that moves with a sound: contacts, plungers, valves. */
const isHeard = (part: PartSpec): boolean =>
  part.kind === 'relay' || part.kind === 'starter' || (part.kind === 'general' && part.symbol === 'solenoid');

/** Gathers what is heard while time passes: relays and plungers that move, and chatter. */
export class Ear {
  private readonly world: World;
  private last: Int16Array;
  private readonly moves = new Map<number, number>();
  private readonly engine: number;
  private readonly running: number;
  private stopped = false;

  constructor(world: World) {
    this.world = world;
    this.last = world.state.regions.slice();
    this.engine = world.model.regionIndex.get('engine') ?? -1;
    this.running = world.model.regions[this.engine]?.states.indexOf('running') ?? -1;
  }

  /** To be called after every step of simulated time. */
  listen(): void {
    const now = this.world.state.regions;
    for (let r = 0; r < now.length; r++) {
      if (now[r] !== this.last[r]) this.moves.set(r, (this.moves.get(r) ?? 0) + 1);
    }
    if (this.last[this.engine] === this.running && now[this.engine] !== this.running) this.stopped = true;
    this.last = now.slice();
  }

  /** An engine that ran and runs down: heard everywhere at the machine. */
  engineStopped(): boolean {
    return this.stopped;
  }

  /** `click:K2` for a relay or valve within earshot; `clunk` and `chatter` for a starter, which is heard everywhere. */
  heard(zone: string): string[] {
    const codes: string[] = [];
    for (const part of this.world.model.book.parts) {
      if (!isHeard(part)) continue;
      const moves = this.moves.get(this.world.model.regionIndex.get(part.id) ?? -1) ?? 0;
      if (moves === 0) continue;
      if (part.kind === 'starter') codes.push(moves >= 4 ? 'chatter' : 'clunk');
      else if (part.zone === zone) codes.push(moves >= 6 ? `buzz:${part.id}` : `click:${part.id}`);
    }
    return codes;
  }
}

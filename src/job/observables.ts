/** What eyes and ears get from the machine without an instrument, as codes of the book. */
import type { ObservableSpec } from '../machine/index.ts';
import { compileGuard, type Model, type Test, type World } from '../machine/index.ts';

export interface Observable {
  spec: ObservableSpec;
  test: Test;
}

const compiled = new WeakMap<Model, Observable[]>();

export function observablesOf(model: Model): Observable[] {
  const known = compiled.get(model);
  if (known !== undefined) return known;
  const list = model.book.observables.map((spec) => ({ spec, test: compileGuard(model, spec.when) }));
  compiled.set(model, list);
  return list;
}

/** Codes of all that could be noticed now from a zone, in the book's order. */
export function noticed(world: World, zone: string): string[] {
  return observablesOf(world.model)
    .filter(({ spec, test }) => (spec.zones.length === 0 || spec.zones.includes(zone)) && test(world))
    .map(({ spec }) => spec.code);
}

/** Gathers what is heard while time passes: relays and plungers that move, and chatter. */
export class Ear {
  private readonly world: World;
  private last: Int16Array;
  private readonly moves = new Map<number, number>();

  constructor(world: World) {
    this.world = world;
    this.last = world.state.regions.slice();
  }

  /** To be called after every step of simulated time. */
  listen(): void {
    const now = this.world.state.regions;
    for (let r = 0; r < now.length; r++) {
      if (now[r] !== this.last[r]) this.moves.set(r, (this.moves.get(r) ?? 0) + 1);
    }
    this.last = now.slice();
  }

  /** `click:K2` for a relay within earshot; `clunk` and `chatter` for a starter, which is heard everywhere. */
  heard(zone: string): string[] {
    const codes: string[] = [];
    for (const part of this.world.model.book.parts) {
      if (part.kind !== 'relay' && part.kind !== 'starter') continue;
      const moves = this.moves.get(this.world.model.regionIndex.get(part.id) ?? -1) ?? 0;
      if (moves === 0) continue;
      if (part.kind === 'starter') codes.push(moves >= 4 ? 'chatter' : 'clunk');
      else if (part.zone === zone) codes.push(moves >= 6 ? `buzz:${part.id}` : `click:${part.id}`);
    }
    return codes;
  }
}

/** When things happen: regions of a machine watched while time passes. */
import type { World } from '../../src/machine/index.ts';

interface Move {
  /** Simulated time since the watch began, ms. */
  ms: number;
  region: string;
  state: string;
}

/** Lets time pass and notes every change of these regions. */
export function watch(world: World, ms: number, regions: readonly string[]): Move[] {
  const begin = world.state.timeMs;
  const last = new Map(regions.map((region) => [region, world.stateOf(region)]));
  const moves: Move[] = [];
  world.advance(ms, (now) => {
    for (const region of regions) {
      const state = now.stateOf(region);
      if (state === last.get(region)) continue;
      last.set(region, state);
      moves.push({ ms: now.state.timeMs - begin, region, state });
    }
  });
  return moves;
}

/** When a region first comes to this state, ms; null where it doesn't. */
export function momentOf(moves: readonly Move[], region: string, state: string): number | null {
  return moves.find((move) => move.region === region && move.state === state)?.ms ?? null;
}

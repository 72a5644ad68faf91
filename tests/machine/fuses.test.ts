/** Every fuse of the book on a bench supply: opening times inside the boxes of the standards. */
import { describe, expect, it } from 'vitest';
import { World } from '../../src/machine/index.ts';
import { benchModel, benchSupply, joint, partOf } from '../support/bench-book.ts';
import { momentOf, watch } from '../support/edges.ts';
import { hobbinBook } from '../support/hobbin.ts';

/** Multiple of rating, least and greatest opening time in seconds. A fuse passes inside every box. */
type Box = [multiple: number, least: number, most: number];

/** ISO 8820-3 blade, all ratings (from memory), the wider of two published boxes at 135 %. */
const BLADE: Box[] = [
  [1.35, 0.75, 1800],
  [1.6, 0.25, 50],
  [2, 0.15, 5],
  [3.5, 0.04, 0.5],
  [6, 0.02, 0.1],
];
/** ISO 8820-4 and -5 bolt-in: series datasheets (from memory). The book opens these above 160 %. */
const BOLT_IN: Box[] = [
  [2, 1, 15],
  [3.5, 0.3, 5],
  [6, 0.1, 1],
];
/** Ratings in the ISO colour code, with the cold resistance of a blade in mohm (ATO datasheets, partly from memory). */
const BLADE_MOHM: Record<number, number> = { 5: 17.85, 7.5: 10.9, 10: 7.7, 15: 4.8, 20: 3.38, 25: 2.52, 30: 1.97 };
const SUPPLY_VOLTS = 12;

const fuses = hobbinBook().parts.flatMap((part) => (part.kind === 'fuse' ? [part] : []));

function loaded(id: string, amps: number): World {
  const joints = [joint('plus', 'PS.+', `${id}.a`), joint('minus', 'PS.-', `${id}.b`)];
  const world = new World(benchModel([benchSupply(SUPPLY_VOLTS), partOf(id)], joints));
  const inside = 0.002 + 2e-6 + world.ohms(...ends(world, `${id}.a`, `${id}.b`));
  world.setQuantity('knob', SUPPLY_VOLTS / amps - inside);
  return world;
}

function ends(world: World, a: string, b: string): [number, number] {
  return [world.model.pointIndex.get(a) ?? -1, world.model.pointIndex.get(b) ?? -1];
}

/** Seconds until it opens at this multiple of its rating; null if it doesn't within half an hour. */
function opensAfter(id: string, amps: number): number | null {
  const ms = momentOf(watch(loaded(id, amps), 1_800_000, [id]), id, 'blown');
  return ms === null ? null : ms / 1000;
}

describe.each(fuses.map((part) => [part.id, part.type, part.ratingAmps, part.ohms] as const))(
  '%s, %s %d A',
  (id, type, rating, ohms) => {
    it('opens inside every box', () => {
      for (const [multiple, least, most] of type === 'blade' ? BLADE : BOLT_IN) {
        // A hair above the edge of the box, so that a curve which begins there has begun.
        const seconds = opensAfter(id, rating * multiple * 1.001) ?? Number.POSITIVE_INFINITY;
        expect(seconds, `${multiple} times ${rating} A`).toBeGreaterThanOrEqual(least);
        expect(seconds, `${multiple} times ${rating} A`).toBeLessThanOrEqual(most);
      }
    });

    it('carries its rating and 110 % of it for half an hour (at least 100 h in ISO 8820-3)', () => {
      expect(opensAfter(id, rating)).toBeNull();
      expect(opensAfter(id, rating * 1.1)).toBeNull();
    });

    it('has the resistance of such a fuse', () => {
      if (type === 'bolt-in') {
        // About 0.1 V at rated current (datasheets of the series, from memory).
        expect(ohms * rating).toBeLessThan(0.12);
        return;
      }
      expect(ohms * 1000).toBeGreaterThan(BLADE_MOHM[rating] * 0.85);
      expect(ohms * 1000).toBeLessThan(BLADE_MOHM[rating] * 1.2);
    });
  },
);

it('melts at the published energy on a dead short: 10 A blade about 115 A2s (from memory)', () => {
  const seconds = opensAfter('F1', 200) ?? 0;
  const energy = 200 * 200 * seconds;
  expect(energy).toBeGreaterThan(115 * 0.6);
  expect(energy).toBeLessThan(115 * 1.7);
});

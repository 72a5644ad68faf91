/** The line of a drawn wire: its end at a terminal, and where it is cut when that end is taken off. */
import type { Run } from './drawing.ts';

export interface RunEnd {
  index: number;
  side: 0 | 1;
}

/** An end this near to a terminal is on it; on a ground rail with one spot for many lugs it is further, units. */
const NEAR = 84;
const ON_RAIL = 330;
/** The stretch that moves when an end is taken off: units, and at most this share of the wire. */
const LOOSE = { length: 84, share: 0.42 };

export const nearestEnd = (runs: readonly Run[], wire: string, x: number, y: number): RunEnd | null =>
  endWithin(NEAR, runs, wire, x, y) ?? endWithin(ON_RAIL, runs, wire, x, y);

function endWithin(reach: number, runs: readonly Run[], wire: string, x: number, y: number): RunEnd | null {
  let least = reach;
  let best: RunEnd | null = null;
  runs.forEach((run, index) => {
    if (run.wire !== wire) return;
    const n = run.points.length;
    for (const side of [0, 1] as const) {
      const at = side === 0 ? 0 : n - 2;
      const far = Math.hypot(run.points[at] - x, run.points[at + 1] - y);
      if (far < least) [best, least] = [{ index, side }, far];
    }
  });
  return best;
}

interface Cut {
  /** Where the rest ends, and the direction in which it went on, of length 1. */
  from: { x: number; y: number };
  ux: number;
  uy: number;
  rest: Run;
}

/** Length of what comes loose at one end, units. */
export const looseLength = ({ points }: Run): number => Math.min(LOOSE.length, LOOSE.share * lengthOf(pairs(points)));

/** Cuts the loose stretch off one end. */
export function cutAt(run: Run, side: 0 | 1, length: number): Cut {
  const points = pairs(run.points);
  if (side === 0) points.reverse();
  let left = length;
  while (points.length > 2 && stepOf(points) <= left) {
    left -= stepOf(points);
    points.pop();
  }
  const [[ax, ay], [bx, by]] = points.slice(-2);
  const step = stepOf(points) || 1;
  const [ux, uy] = [(bx - ax) / step, (by - ay) / step];
  const from = { x: bx - ux * left, y: by - uy * left };
  points[points.length - 1] = [from.x, from.y];
  if (side === 0) points.reverse();
  return { from, ux, uy, rest: { ...run, points: points.flat() } };
}

function pairs(flat: readonly number[]): [number, number][] {
  const points: [number, number][] = [];
  for (let i = 0; i + 1 < flat.length; i += 2) points.push([flat[i], flat[i + 1]]);
  return points;
}

const lengthOf = (points: [number, number][]): number =>
  points.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i][0], y - points[i][1]), 0);

/** Length of the last stretch. */
function stepOf(points: [number, number][]): number {
  const [[ax, ay], [bx, by]] = points.slice(-2);
  return Math.hypot(bx - ax, by - ay);
}

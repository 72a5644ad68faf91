/** Where the instrument lies so that it covers as little as can be of what is being worked on. Pixels of the bench. */
export interface Rect {
  x: number;
  y: number;
  w: number;
  h: number;
}
export interface Spot {
  x: number;
  y: number;
}
/** Something that should stay in sight, and how much. */
export interface Kept extends Spot {
  weight: number;
}

/** A point is covered when the instrument comes nearer to it than this, so that it can still be touched. */
const CLEAR = 16;
/** Places that are tried lie this far apart. */
const STEP = 20;
export const covers = ({ x, y, w, h }: Rect, spot: Spot): boolean =>
  spot.x > x - CLEAR && spot.x < x + w + CLEAR && spot.y > y - CLEAR && spot.y < y + h + CLEAR;

/** The nearest spot at which all of it is in the room; where it is too large its head is. */
export function heldIn(room: Rect, size: { w: number; h: number }, { x, y }: Spot): Spot {
  const hold = (at: number, from: number, free: number): number => Math.max(from, Math.min(at, from + free));
  return { x: hold(x, room.x, room.w - size.w), y: hold(y, room.y, room.h - size.h) };
}

/** The spot that covers the least; of equal ones the nearest to `near`. */
export function bestSpot(room: Rect, size: { w: number; h: number }, kept: readonly Kept[], near: Spot): Spot {
  const [right, bottom] = [Math.max(room.x, room.x + room.w - size.w), Math.max(room.y, room.y + room.h - size.h)];
  let best: Spot = { x: right, y: room.y };
  let least = Infinity;
  for (const x of steps(room.x, right)) {
    for (const y of steps(room.y, bottom)) {
      const covered = kept.reduce((sum, spot) => sum + (covers({ x, y, ...size }, spot) ? spot.weight : 0), 0);
      const cost = covered + Math.hypot(x - near.x, y - near.y) / (room.w + room.h + 1);
      if (cost < least) [best, least] = [{ x, y }, cost];
    }
  }
  return best;
}

function steps(from: number, to: number): number[] {
  const list: number[] = [];
  for (let at = from; at < to; at += STEP) list.push(at);
  return [...list, to];
}

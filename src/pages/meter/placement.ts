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

/** To lie on a drawing is worse than to lie far off, and better than to cover a point of it. */
const ON_DRAWING = 0.7;
const FAR = 0.25;

/** The spot that covers the least of what is kept, then of the drawings; of equal ones the nearest to `near`. */
export function bestSpot(
  room: Rect,
  size: { w: number; h: number },
  kept: readonly Kept[],
  drawings: readonly Rect[],
  near: Spot,
): Spot {
  const [right, bottom] = [Math.max(room.x, room.x + room.w - size.w), Math.max(room.y, room.y + room.h - size.h)];
  let best: Spot = { x: right, y: room.y };
  let least = Infinity;
  for (const x of steps(room.x, right)) {
    for (const y of steps(room.y, bottom)) {
      const covered = kept.reduce((sum, spot) => sum + (covers({ x, y, ...size }, spot) ? spot.weight : 0), 0);
      const far = Math.hypot(x - near.x, y - near.y) / (room.w + room.h + 1);
      const cost = covered + ON_DRAWING * shareOn(drawings, { x, y, ...size }) + FAR * far;
      if (cost < least) [best, least] = [{ x, y }, cost];
    }
  }
  return best;
}

/** How much of the instrument lies on drawings, 0 to 1. */
function shareOn(drawings: readonly Rect[], { x, y, w, h }: Rect): number {
  const along = (a: number, b: number, c: number, d: number): number =>
    Math.max(0, Math.min(a + b, c + d) - Math.max(a, c));
  const on = drawings.reduce((sum, d) => sum + along(x, w, d.x, d.w) * along(y, h, d.y, d.h), 0);
  return on / Math.max(1, w * h);
}

function steps(from: number, to: number): number[] {
  const list: number[] = [];
  for (let at = from; at < to; at += STEP) list.push(at);
  return [...list, to];
}

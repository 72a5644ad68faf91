/** What a sheet is drawn on: strokes by layer, points, the ground that is taken, and the labels that want a place. */
import type { Box, DrawnPoint } from '../drawing.ts';
import { circle } from './ink.ts';
import type { LabelRequest, Spot } from './labels.ts';

/** Radius of a point as drawn, and within which it is meant, units. */
const POINT_DRAWN = 3.6;
const POINT_HIT = 12;

export class Canvas {
  /** Device boxes lie under the symbols in them. */
  readonly devices: string[] = [];
  readonly symbols: string[] = [];
  readonly marks: string[] = [];
  readonly points: DrawnPoint[] = [];
  readonly solids: Box[] = [];
  /** Ground in the second paper tone: labels on it have their halo in that tone. */
  readonly tinted: Box[] = [];
  readonly parts = new Map<string, Box>();
  readonly labels: LabelRequest[] = [];
  /** Repetitions, placed last. */
  readonly spare: LabelRequest[] = [];

  /** By connector: its pins together, and its pins parted. */
  readonly plugs = new Map<string, { mated: string; parted: string }>();

  plug(connector: string, mated: string, parted: string): void {
    const known = this.plugs.get(connector) ?? { mated: '', parted: '' };
    this.plugs.set(connector, { mated: known.mated + mated, parted: known.parted + parted });
  }

  take(x: number, y: number, w: number, h: number): void {
    this.solids.push({ x, y, w, h });
  }

  /** Ground of an upright or level stroke. */
  takeLine(x1: number, y1: number, x2: number, y2: number, width: number): void {
    const half = width / 2;
    this.take(Math.min(x1, x2) - half, Math.min(y1, y2) - half, Math.abs(x2 - x1) + width, Math.abs(y2 - y1) + width);
  }

  point(point: string, x: number, y: number): void {
    if (this.points.some((p) => p.point === point)) return;
    this.points.push({ point, x, y, r: POINT_HIT });
    this.marks.push(circle(x, y, POINT_DRAWN, 1.4));
    this.take(x - 4.5, y - 4.5, 9, 9);
  }

  label(request: LabelRequest): void {
    (request.spare ? this.spare : this.labels).push(request);
  }

  /** A part's box grows over all that is drawn of it. */
  part(id: string, box: Box): void {
    const known = this.parts.get(id) ?? box;
    const x = Math.min(known.x, box.x);
    const y = Math.min(known.y, box.y);
    const right = Math.max(known.x + known.w, box.x + box.w);
    const bottom = Math.max(known.y + known.h, box.y + box.h);
    this.parts.set(id, { x, y, w: right - x, h: bottom - y });
  }
}

/** Spots on both sides of a point on an upright path, moved along it by each of `shifts`. */
export function beside(x: number, y: number, gap: number, shifts: readonly number[], first: 'left' | 'right'): Spot[] {
  const spots: Spot[] = [];
  for (const side of first === 'left' ? [-1, 1] : [1, -1]) {
    for (const shift of shifts) {
      spots.push({ x: x + side * gap, y: y + shift, anchor: side < 0 ? 'end' : 'start' });
    }
  }
  return spots;
}

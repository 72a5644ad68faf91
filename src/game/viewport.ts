/** Where a drawing lies in its pane: pixels of the device a unit, and the pixel of the drawing's origin. */
import type { Box } from './drawing.ts';

export interface Placement {
  scale: number;
  x: number;
  y: number;
}
export interface Size {
  w: number;
  h: number;
}

/** Is there more room below a place than beside it? Then the schematic lies below. */
export const isStacked = ({ w, h }: Size): boolean => h > w;

/** Room for the schematic's buttons above it where it lies below the place, pixels of the screen (CSS). */
export const SHEET_HEAD = 58;

/** Below the first the smallest lettering of a place can't be read, at the second it can: pixels of the screen (CSS) a unit. */
export const LEGIBLE = { least: 0.62, good: 0.78 };

/** Closest look: pixels of the screen (CSS) a unit. */
const CLOSEST = 5;
/** Part of a pane that the drawing keeps on screen however far it is pushed. */
const KEPT = 0.25;

export function fitting(drawing: Box, pane: Size, margin = 0): Placement {
  const scale = Math.max(0.05, Math.min((pane.w - 2 * margin) / drawing.w, (pane.h - 2 * margin) / drawing.h));
  return {
    scale,
    x: Math.round((pane.w - scale * drawing.w) / 2 - scale * drawing.x),
    y: Math.round((pane.h - scale * drawing.h) / 2 - scale * drawing.y),
  };
}

/** As wide as the pane, from the top down. */
export function atHead(drawing: Box, pane: Size): Placement {
  const scale = Math.max(0.05, pane.w / drawing.w);
  return { scale, x: Math.round(-scale * drawing.x), y: Math.round(-scale * drawing.y) };
}

/** Zooms by a factor about a pixel of the pane. */
export function zoomAt(
  at: Placement,
  factor: number,
  px: number,
  py: number,
  least: number,
  density: number,
): Placement {
  const scale = Math.min(Math.max(at.scale * factor, least), Math.max(CLOSEST * density, least));
  const k = scale / at.scale;
  return { scale, x: px - (px - at.x) * k, y: py - (py - at.y) * k };
}

/** A smaller drawing is centred, a larger one can't be pushed out of the pane, with `kept` 0 not even off its edge. */
export function held(at: Placement, drawing: Box, pane: Size, kept = KEPT): Placement {
  const hold = (offset: number, start: number, length: number, room: number): number => {
    const [from, size] = [offset + at.scale * start, at.scale * length];
    if (size <= room * 1.001) return Math.round((room - size) / 2 - at.scale * start);
    const slack = room * kept;
    const within = Math.min(slack, Math.max(from, room - slack - size));
    return Math.round(within - at.scale * start);
  };
  return {
    scale: at.scale,
    x: hold(at.x, drawing.x, drawing.w, pane.w),
    y: hold(at.y, drawing.y, drawing.h, pane.h),
  };
}

/** The part of a drawing that a pane shows, units. */
export const seen = (at: Placement, pane: Size): Box => ({
  x: -at.x / at.scale,
  y: -at.y / at.scale,
  w: pane.w / at.scale,
  h: pane.h / at.scale,
});

/** Puts a spot of the drawing into the middle, close enough to read. */
export function centredOn(x: number, y: number, scale: number, pane: Size): Placement {
  return { scale, x: Math.round(pane.w / 2 - scale * x), y: Math.round(pane.h / 2 - scale * y) };
}

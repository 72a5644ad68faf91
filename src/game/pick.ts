/** What lies under the finger: the nearest point first, then a handle, a part, a place to enter. No Phaser here. */
import { lyingAt } from './cloth.ts';
import type { Box, Drawing, DrawnControl } from './drawing.ts';
import type { StageView } from './view.ts';
import { contains, isShown, poseOf, type Spot, sameRules, sealedSpots, shiftOf } from './visible.ts';

export type Picked =
  /** Sealed: it can be seen but not touched. */
  | { kind: 'point'; spot: Spot; sealed?: true }
  | { kind: 'control'; control: DrawnControl; x: number; y: number }
  | { kind: 'part'; part: string; box: Box }
  | { kind: 'zone'; zone: string; polygon: number[] | null };

/** How near a point must be to be meant, pixels of the screen (CSS). Half of a 44 px target. */
export const REACH = 22;
/** With a lead in hand a point is what is meant: it comes before handles, and is looked for further off. */
const LEAD_REACH = 40;
/** Nearer than this a point wins over a handle that lies there too. */
const SURE = 10;

export interface Question {
  drawing: Drawing;
  view: StageView;
  found: Spot[];
  x: number;
  y: number;
  /** Units a pixel of the screen. */
  unit: number;
}

export function pick(question: Question): Picked | null {
  const { drawing, view, x, y, unit } = question;
  if (view.leadInHand !== null) return pickForLead(question);
  const near = nearest(question.found, x, y, REACH * unit);
  if (near && (near.distance <= SURE * unit || near.distance <= near.spot.point.r))
    return { kind: 'point', spot: near.spot };
  const control = controlAt(drawing, view, x, y);
  if (control) return control;
  if (near) return { kind: 'point', spot: near.spot };
  const sealed = nearest(sealedSpots(drawing, view), x, y, SURE * unit);
  if (sealed) return { kind: 'point', spot: sealed.spot, sealed: true };
  const lying = lyingAt(drawing, view, x, y);
  if (lying) return { kind: 'part', ...lying };
  return coverAt(drawing, view, x, y) ?? partAt(drawing, view, x, y) ?? zoneAt(drawing, x, y);
}

/** A sealed pin that lies nearer is what was meant: the lead must not land on its neighbour unasked. */
function pickForLead({ drawing, view, found, x, y, unit }: Question): Picked | null {
  const near = nearest(found, x, y, LEAD_REACH * unit);
  const sealed = nearest(sealedSpots(drawing, view), x, y, REACH * unit);
  if (sealed && (!near || sealed.distance < near.distance)) return { kind: 'point', spot: sealed.spot, sealed: true };
  if (near && near.distance <= REACH * unit) return { kind: 'point', spot: near.spot };
  const control = controlAt(drawing, view, x, y);
  if (control) return control;
  if (near) return { kind: 'point', spot: near.spot };
  return coverAt(drawing, view, x, y) ?? partAt(drawing, view, x, y) ?? zoneAt(drawing, x, y);
}

export function nearest(found: Spot[], x: number, y: number, reach: number): { spot: Spot; distance: number } | null {
  let best: { spot: Spot; distance: number } | null = null;
  for (const spot of found) {
    const distance = Math.hypot(spot.x - x, spot.y - y);
    if (distance <= reach && (!best || distance < best.distance)) best = { spot, distance };
  }
  return best;
}

/** Where a spot of the screen lies on a thing that is shifted and turned: in the pose in which it is drawn. */
export function unposed(control: DrawnControl, view: StageView, x: number, y: number): { x: number; y: number } {
  const { dx, dy } = shiftOf(control.shift, view);
  let [px, py] = [x - dx, y - dy];
  if (!control.motion) return { x: px, y: py };
  const pose = poseOf(control.motion, view);
  [px, py] = [px - pose.dx, py - pose.dy];
  const { pivot } = control.motion;
  if (!pivot) return { x: px, y: py };
  const angle = (-pose.turn * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return { x: pivot.x + c * (px - pivot.x) - s * (py - pivot.y), y: pivot.y + s * (px - pivot.x) + c * (py - pivot.y) };
}

/** The smallest handle there: the button in a lever comes before the lever. */
function controlAt(drawing: Drawing, view: StageView, x: number, y: number): Picked | null {
  const covers = drawing.layers.filter((l) => l.role === 'cover' && isShown(l, view) && contains(l.box, x, y));
  let best: Picked | null = null;
  let size = Infinity;
  for (const control of drawing.controls) {
    if (!isShown(control, view)) continue;
    if (covers.some((c) => !sameRules(c.when ?? [], control.when ?? []) && control.when)) continue;
    const at = unposed(control, view, x, y);
    const { dx, dy } = shiftOf(control.shift, view);
    const isIn = contains(control.box, at.x, at.y) || (!!control.reach && contains(control.reach, x - dx, y - dy));
    const area = control.box.w * control.box.h;
    if (isIn && area < size) {
      best = { kind: 'control', control, x: x - dx, y: y - dy };
      size = area;
    }
  }
  return best;
}

/** A cover that is on stands for the place that it closes. */
function coverAt(drawing: Drawing, view: StageView, x: number, y: number): Picked | null {
  const isOn = drawing.layers.some((l) => l.role === 'cover' && isShown(l, view) && contains(l.box, x, y));
  return isOn ? { kind: 'zone', zone: view.place, polygon: null } : null;
}

function partAt(drawing: Drawing, view: StageView, x: number, y: number): Picked | null {
  let best: { part: string; box: Box } | null = null;
  for (const drawn of drawing.parts) {
    const { part, box } = drawn;
    const { dx, dy } = shiftOf(drawn.shift, view);
    if (!isShown(drawn, view) || !contains(box, x - dx, y - dy)) continue;
    if (!best || box.w * box.h < best.box.w * best.box.h) best = { part, box };
  }
  return best && { kind: 'part', ...best };
}

function zoneAt(drawing: Drawing, x: number, y: number): Picked | null {
  const under = drawing.areas.filter(({ polygon }) => isInside(polygon, x, y));
  const area = under.find((a) => a.sign) ?? under[0];
  if (!area) return null;
  // A sign lights up what it names.
  const place = drawing.areas.find((a) => a.zone === area.zone && !a.sign) ?? area;
  return { kind: 'zone', zone: area.zone, polygon: place.polygon };
}

/** Even-odd rule. */
export function isInside(polygon: number[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = polygon.length - 2; i < polygon.length; j = i, i += 2) {
    const [xi, yi, xj, yj] = [polygon[i], polygon[i + 1], polygon[j], polygon[j + 1]];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

/** Which layers, points and controls a view shows, and where what moves stands. No Phaser here. */
import type { Box, Drawing, DrawnPoint, Layer, Motion, Pose, Rule, Shift } from './drawing.ts';
import type { StageView } from './view.ts';

export function holds(rule: Rule, view: StageView): boolean {
  return actual(rule, view) === rule.is;
}

function actual({ topic, id, value }: Rule, view: StageView): boolean {
  switch (topic) {
    case 'opened':
      return view.opened.includes(id);
    case 'pulled':
      return view.pulled.includes(id);
    case 'parted':
      return view.unplugged.includes(id);
    case 'blown':
      return view.blown.includes(id);
    case 'lamp':
      return view.lamps[id] === true;
    case 'chocks':
      return view.chocks;
    case 'dark':
      return view.theme === 'dark';
    case 'control':
      return (view.controls[id] ?? '') === value;
  }
}

export const isShown = (thing: { when?: Rule[] }, view: StageView): boolean =>
  (thing.when ?? []).every((rule) => holds(rule, view));

/** How far a shifted thing is from where it is drawn, units. */
export function shiftOf(shift: Shift | undefined, view: StageView): { dx: number; dy: number } {
  if (!shift) return { dx: 0, dy: 0 };
  const list = shift.topic === 'opened' ? view.opened : view.unplugged;
  return list.includes(shift.id) ? { dx: shift.dx, dy: shift.dy } : { dx: 0, dy: 0 };
}

export function poseOf(motion: Motion, view: StageView): Required<Pose> {
  const { poses } = motion;
  const readout = view.readouts?.[motion.control];
  if (typeof readout === 'number') {
    const share = Math.min(1, Math.max(0, readout));
    const [from, to] = [poses['0']?.turn ?? 0, poses['1']?.turn ?? 0];
    return { turn: from + (to - from) * share, dx: 0, dy: 0 };
  }
  const pose = poses[view.controls[motion.control] ?? ''] ?? Object.values(poses)[0] ?? {};
  return { turn: pose.turn ?? 0, dx: pose.dx ?? 0, dy: pose.dy ?? 0 };
}

/** Controls of which the view says nothing stand at rest. */
export function completed(view: StageView, drawing: Drawing): StageView {
  const rest = Object.fromEntries(drawing.controls.map((c) => [c.control, c.rest]));
  return { ...view, controls: { ...rest, ...view.controls } };
}

export interface Spot {
  point: DrawnPoint;
  x: number;
  y: number;
}

/** Points that can be touched now: their rules hold and no cover lies over them. */
export const spots = (drawing: Drawing, view: StageView): Spot[] => uncovered(drawing, view, (p) => isShown(p, view));

/** Points of a sealed plug that is together: drawn under their seals. */
export const sealedSpots = (drawing: Drawing, view: StageView): Spot[] =>
  uncovered(drawing, view, ({ reach, when = [] }) => {
    const sealing = when.filter((rule) => rule.topic === 'parted');
    return reach === 'unplugged' && when.every((rule) => holds(rule, view) !== sealing.includes(rule));
  });

function uncovered(drawing: Drawing, view: StageView, wanted: (point: DrawnPoint) => boolean): Spot[] {
  const covers = drawing.layers.filter((l) => l.role === 'cover' && isShown(l, view));
  const found: Spot[] = [];
  for (const point of drawing.points) {
    if (!wanted(point)) continue;
    const { dx, dy } = shiftOf(point.shift, view);
    const [x, y] = [point.x + dx, point.y + dy];
    const onCover = (cover: Layer): boolean => sameRules(cover.when ?? [], point.when ?? []);
    if (!covers.some((cover) => !onCover(cover) && contains(cover.box, x, y))) found.push({ point, x, y });
  }
  return found;
}

/** True when all of a cover's rules are also the thing's: it is mounted on that cover. */
export const sameRules = (cover: Rule[], own: Rule[]): boolean =>
  cover.every((rule) => own.some((r) => r.topic === rule.topic && r.id === rule.id && r.is === rule.is));

export const contains = (box: Box, x: number, y: number): boolean =>
  x >= box.x && x <= box.x + box.w && y >= box.y && y <= box.y + box.h;

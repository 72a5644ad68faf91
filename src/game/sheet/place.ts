/** Heights of all points: rigid symbols, wires that take up the slack, rails and rows that are fixed. */
import type { PointId } from '../../parts/index.ts';
import { Bodies, type Spring, shares } from './bodies.ts';
import { wireText } from './colours.ts';
import { textWidth } from './metrics.ts';
import { hasPlug } from './network.ts';
import type { SheetPlan } from './plan.ts';
import { railHeights } from './rails.ts';
import { FRAMED_HEIGHT, INLINE_HEIGHT, PLUG_HEIGHT, SYMBOL_HEIGHT, symbolOf } from './symbol-kind.ts';
import type { Step } from './walk.ts';

export interface Heights {
  y: Map<PointId, number>;
  /** Height of the ground rail, and of the lane in which wires cross over to climb. */
  ground: number;
  foot: number;
  rail: Map<PointId, number>;
}

/** From the lowest feed rail to the first free height, units. */
const BELOW_RAILS = 40;
/** The foot lane above the ground rail, units. */
const FOOT = 92;
/** Room that a device's box takes above a path that starts at one of its terminals, and below one that ends so. */
const BOX_ROOM = 74;
const END_ROOM = 60;
/** A wire is long enough for its text and this much more, units. */
const WIRE_AIR = 24;
const MAX_ROUNDS = 8;

function lengthOf(plan: SheetPlan, step: Step): number {
  const { edge } = step;
  if (edge.kind === 'pin') return edge.inline ? INLINE_HEIGHT : PLUG_HEIGHT;
  if (edge.kind === 'element') {
    const kind = symbolOf(edge);
    const framed = edge.part.kind === 'starter' || (edge.part.kind === 'switch' && hasPlug(plan.network, edge.part));
    return framed && (kind === 'contact' || kind === 'winding')
      ? Math.max(FRAMED_HEIGHT, SYMBOL_HEIGHT[kind])
      : SYMBOL_HEIGHT[kind];
  }
  return textWidth(wireText(edge.wire), 16) + WIRE_AIR;
}

export function solveHeights(plan: SheetPlan): Heights {
  let ground = plan.sheet.ground;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const solved = solveAt(plan, ground);
    if (typeof solved !== 'number') return solved;
    ground += solved;
  }
  throw new RangeError(`the rows of sheet ${plan.sheet.id} leave no room for its paths`);
}

/** Heights with the ground rail at `ground`, or how much lower it must be. */
function solveAt(plan: SheetPlan, ground: number): Heights | number {
  const { bodies, springs } = gather(plan);
  const { at: rail, lowestFeed } = railHeights(plan, ground);
  const top = lowestFeed + BELOW_RAILS;
  const foot = ground - FOOT;
  const fixed = new Map<string, number>([['foot', foot], ...rail]);
  for (const [point, row] of Object.entries(plan.sheet.rows)) {
    const { root, offset } = bodies.find(point);
    fixed.set(root, (row < 0 ? ground + row : row) - offset);
  }
  const roots = new Set(springs.flatMap((s) => [s.from, s.to]));
  const points = [...plan.pointX.keys()];
  for (const point of points) roots.add(bodies.find(point).root);
  const early = earliest(plan, bodies, [...roots], springs, fixed, top);
  let missing = 0;
  for (const [root, y] of early.need) missing = Math.max(missing, y - (fixed.get(root) ?? y));
  if (missing > 0.01) return Math.ceil(missing);
  const late = latest([...roots], springs, fixed, ground, bodies, points);
  const share = shares([...roots], springs, fixed);
  const y = new Map<PointId, number>(rail);
  for (const point of points) {
    const { root, offset } = bodies.find(point);
    const e = early.at.get(root) ?? top;
    const l = Math.max(late.get(root) ?? e, e);
    y.set(point, Math.round(e + (l - e) * (share.get(root) ?? 0) + offset));
  }
  return { y, ground, foot, rail };
}

function gather(plan: SheetPlan): { bodies: Bodies; springs: Spring[] } {
  const bodies = new Bodies();
  const loose: { step: Step; weight: number }[] = [];
  const climbs: Step[] = [];
  for (const level of plan.sheet.levels) for (const point of level.slice(1)) bodies.bind(level[0], point, 0);
  for (const path of plan.paths) {
    path.steps.forEach((step, i) => {
      const atRail = plan.rails.has(step.from) || plan.rails.has(step.to);
      if (path.climbX !== undefined && i === path.steps.length - 1) climbs.push(step);
      else if (step.edge.kind === 'wire') loose.push({ step, weight: 1 });
      else if (atRail || !bodies.bind(step.from, step.to, lengthOf(plan, step))) loose.push({ step, weight: 0 });
    });
  }
  const springs: Spring[] = [];
  for (const { step, weight } of loose) {
    const a = bodies.find(step.from);
    const b = bodies.find(step.to);
    if (a.root === b.root) continue;
    springs.push({ from: a.root, to: b.root, least: lengthOf(plan, step) + a.offset - b.offset, weight });
  }
  for (const step of climbs) {
    const a = bodies.find(step.from);
    springs.push({ from: a.root, to: 'foot', least: 30 + a.offset, weight: 1 });
  }
  return { bodies, springs };
}

/** Least height of each body, and the height that the bodies which are fixed would need. */
function earliest(
  plan: SheetPlan,
  bodies: Bodies,
  roots: string[],
  springs: Spring[],
  fixed: ReadonlyMap<string, number>,
  top: number,
): { at: Map<string, number>; need: Map<string, number> } {
  const at = new Map<string, number>(roots.map((root) => [root, fixed.get(root) ?? Number.NEGATIVE_INFINITY]));
  for (const { steps } of plan.paths) {
    const first = steps[0];
    const { root, offset } = bodies.find(first.from);
    const least = top + (first.edge.kind === 'wire' ? 0 : BOX_ROOM) - offset;
    if (!fixed.has(root)) at.set(root, Math.max(at.get(root) ?? top, plan.rails.has(first.from) ? top : least));
  }
  for (const point of plan.pointX.keys()) {
    const { root, offset } = bodies.find(point);
    if (!fixed.has(root)) at.set(root, Math.max(at.get(root) ?? top, top - offset));
  }
  const need = new Map<string, number>();
  for (let i = 0; i <= roots.length; i++) {
    for (const s of springs) {
      const y = (at.get(s.from) ?? top) + s.least;
      if (fixed.has(s.to)) need.set(s.to, Math.max(need.get(s.to) ?? y, y));
      else if (y > (at.get(s.to) ?? top)) at.set(s.to, y);
    }
  }
  return { at, need };
}

function latest(
  roots: string[],
  springs: Spring[],
  fixed: ReadonlyMap<string, number>,
  ground: number,
  bodies: Bodies,
  points: PointId[],
): Map<string, number> {
  const at = new Map<string, number>(roots.map((root) => [root, fixed.get(root) ?? Number.POSITIVE_INFINITY]));
  for (const point of points) {
    const { root, offset } = bodies.find(point);
    if (!fixed.has(root)) at.set(root, Math.min(at.get(root) ?? ground, ground - END_ROOM - offset));
  }
  for (let i = 0; i <= roots.length; i++) {
    for (const s of springs) {
      const y = (at.get(s.to) ?? ground) - s.least;
      if (!fixed.has(s.from) && y < (at.get(s.from) ?? ground)) at.set(s.from, y);
    }
  }
  return at;
}

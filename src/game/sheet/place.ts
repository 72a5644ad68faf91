/** Heights of all points: rigid symbols, wires that take up the slack, rails and rows that are fixed. */
import type { PointId } from '../../parts/index.ts';
import { wireText } from './colours.ts';
import { textWidth } from './metrics.ts';
import type { SheetPlan } from './plan.ts';
import { INLINE_HEIGHT, PLUG_HEIGHT, SYMBOL_HEIGHT, symbolOf } from './symbol-kind.ts';
import type { Step } from './walk.ts';

export interface Heights {
  y: Map<PointId, number>;
  /** Height of the ground rail, and of the lane in which wires cross over to climb. */
  ground: number;
  foot: number;
  rail: Map<PointId, number>;
}

/** First feed rail and the step to the next, units; the first free height below them. */
const RAIL_TOP = 66;
const RAIL_STEP = 34;
const BELOW_RAILS = 40;
/** The foot lane above the ground rail, units. */
const FOOT = 92;
/** Room that a device's box takes above a path that starts at one of its terminals, and below one that ends so. */
const BOX_ROOM = 62;
const END_ROOM = 60;
/** A wire is long enough for its text and this much more, units. */
const WIRE_AIR = 16;
const MAX_ROUNDS = 8;

interface Spring {
  from: string;
  to: string;
  least: number;
  /** Share of the slack that it takes. */
  weight: number;
}

/** Points that keep their distance, as one body: union-find with offsets. */
class Bodies {
  private readonly parent = new Map<PointId, { to: PointId; offset: number }>();

  find(point: PointId): { root: PointId; offset: number } {
    let root = point;
    let offset = 0;
    for (let up = this.parent.get(root); up !== undefined; up = this.parent.get(root)) {
      offset += up.offset;
      root = up.to;
    }
    return { root, offset };
  }

  /** Binds `b` at `distance` below `a`. False if the two are bound already. */
  bind(a: PointId, b: PointId, distance: number): boolean {
    const p = this.find(a);
    const q = this.find(b);
    if (p.root === q.root) return false;
    this.parent.set(q.root, { to: p.root, offset: p.offset + distance - q.offset });
    return true;
  }
}

export function lengthOf(step: Step): number {
  const { edge } = step;
  if (edge.kind === 'pin') return edge.inline ? INLINE_HEIGHT : PLUG_HEIGHT;
  if (edge.kind === 'element') return SYMBOL_HEIGHT[symbolOf(edge)];
  return textWidth(wireText(edge.wire), 16) + WIRE_AIR;
}

export function solveHeights(plan: SheetPlan): Heights {
  const feeds = plan.sheet.rails.filter((rail) => rail.kind === 'feed');
  const top = RAIL_TOP + RAIL_STEP * (feeds.length - 1) + BELOW_RAILS;
  let ground = plan.sheet.ground;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const solved = solveAt(plan, top, ground);
    if (typeof solved !== 'number') return solved;
    ground += solved;
  }
  throw new RangeError(`the rows of sheet ${plan.sheet.id} leave no room for its paths`);
}

/** Heights with the ground rail at `ground`, or how much lower it must be. */
function solveAt(plan: SheetPlan, top: number, ground: number): Heights | number {
  const { bodies, springs } = gather(plan);
  const rail = railHeights(plan, ground);
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

function railHeights(plan: SheetPlan, ground: number): Map<PointId, number> {
  let feeds = 0;
  return new Map(
    plan.sheet.rails.map((rail) => [rail.point, rail.kind === 'ground' ? ground : RAIL_TOP + RAIL_STEP * feeds++]),
  );
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
      else if (atRail || !bodies.bind(step.from, step.to, lengthOf(step))) loose.push({ step, weight: 0 });
    });
  }
  const springs: Spring[] = [];
  for (const { step, weight } of loose) {
    const a = bodies.find(step.from);
    const b = bodies.find(step.to);
    if (a.root === b.root) continue;
    springs.push({ from: a.root, to: b.root, least: lengthOf(step) + a.offset - b.offset, weight });
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

/** How far each body sinks into its slack, 0 to 1: wires above it against wires below it, to what is fixed. */
function shares(roots: string[], springs: Spring[], fixed: ReadonlyMap<string, number>): Map<string, number> {
  const above = new Map<string, number>();
  const below = new Map<string, number>(roots.map((root) => [root, fixed.has(root) ? 0 : Number.NaN]));
  for (let i = 0; i <= roots.length; i++) {
    for (const { from, to, weight } of springs) {
      const down = (fixed.has(from) ? 0 : (above.get(from) ?? 0)) + weight;
      if (!fixed.has(to)) above.set(to, Math.max(above.get(to) ?? 0, down));
      const up = (below.get(to) ?? Number.NaN) + weight;
      const known = below.get(from) ?? Number.NaN;
      if (!fixed.has(from) && !Number.isNaN(up) && !(known >= up)) below.set(from, up);
    }
  }
  const share = new Map<string, number>();
  for (const root of roots) {
    const a = above.get(root) ?? 0;
    const b = below.get(root) ?? Number.NaN;
    // A body from which nothing fixed hangs stays as high as it can.
    share.set(root, Number.isNaN(b) || a + b === 0 ? 0 : a / (a + b));
  }
  return share;
}

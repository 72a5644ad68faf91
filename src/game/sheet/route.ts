/** Lines of the steps: where each starts, turns and ends on the sheet. */
import type { PointId } from '../../parts/index.ts';
import type { Heights } from './place.ts';
import type { ColumnPath, SheetPlan } from './plan.ts';
import type { Step } from './walk.ts';

export interface Corner {
  x: number;
  y: number;
}
export interface Routed {
  step: Step;
  path: ColumnPath;
  /** From the step's first point to its last. */
  line: Corner[];
}

/** A line inside a device leaves its terminal's column this far below the terminal, and joins this far above one. */
const INSIDE = 16;

export function routeAll(plan: SheetPlan, heights: Heights): Routed[] {
  return plan.paths.flatMap((path) =>
    path.steps.map((step, i) => ({
      step,
      path,
      line: routeStep(plan, heights, path, step, i === path.steps.length - 1),
    })),
  );
}

function routeStep(plan: SheetPlan, heights: Heights, path: ColumnPath, step: Step, last: boolean): Corner[] {
  const from = { x: plan.pointX.get(step.from) ?? path.x, y: heights.y.get(step.from) ?? 0 };
  const to = { x: plan.pointX.get(step.to) ?? path.x, y: heights.y.get(step.to) ?? 0 };
  const line: Corner[] = [from];
  const inside = step.edge.kind === 'element' ? INSIDE : 0;
  if (from.x !== path.x) line.push({ x: from.x, y: from.y + inside }, { x: path.x, y: from.y + inside });
  if (last && path.climbX !== undefined) {
    to.x = path.climbX;
    line.push({ x: path.x, y: heights.foot }, { x: path.climbX, y: heights.foot });
  } else if (to.x !== path.x) {
    const up = plan.elsewhere.has(step.to) ? 0 : inside;
    line.push({ x: path.x, y: to.y - up }, { x: to.x, y: to.y - up });
  }
  line.push(to);
  return straight(line);
}

/** Without corners that aren't any. */
export function straight(line: readonly Corner[]): Corner[] {
  const out: Corner[] = [];
  for (const corner of line) {
    const a = out[out.length - 2];
    const b = out[out.length - 1];
    if (b !== undefined && b.x === corner.x && b.y === corner.y) continue;
    const level = a !== undefined && a.y === b.y && b.y === corner.y;
    const upright = a !== undefined && a.x === b.x && b.x === corner.x;
    if (level || upright) out.pop();
    out.push(corner);
  }
  return out;
}

export const lineText = (line: readonly Corner[]): string =>
  line.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');

/** Where several lines leave a point to one side, all but the farthest need a dot where they turn off. */
export function junctions(routed: readonly Routed[], points: ReadonlyMap<PointId, number>): Corner[] {
  const lanes = new Map<string, Corner[]>();
  const dots: Corner[] = [];
  const look = (point: PointId, ends: readonly Corner[]): void => {
    const first = ends[0];
    // Inside a device the lane leaves the terminal's own column a little below or above the terminal.
    const at = first.y === ends[1].y ? 1 : 2;
    const turn = ends[at];
    if (!points.has(point) || ends.length <= at + 1 || turn.y !== ends[at - 1].y) return;
    if (at === 2 && Math.abs(ends[1].y - first.y) !== INSIDE) return;
    if (at === 2) dots.push(ends[1]);
    const key = `${point}|${Math.sign(turn.x - first.x)}|${turn.y}`;
    lanes.set(key, [...(lanes.get(key) ?? []), turn]);
  };
  for (const { step, line } of routed) {
    look(step.from, line);
    look(step.to, [...line].reverse());
  }
  for (const [key, turns] of lanes) {
    const away = Number(key.split('|')[1]);
    dots.push(...turns.sort((a, b) => away * (a.x - b.x)).slice(0, -1));
  }
  return dots;
}

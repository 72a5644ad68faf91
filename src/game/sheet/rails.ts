/** Rails: the columns that hang on them, and their heights. */
import type { PointId } from '../../parts/index.ts';
import type { SheetPlan } from './plan.ts';

export interface Span {
  from: number;
  to: number;
  users: number[];
}

/** Users of a rail by column; a ground rail breaks where another stud's users stand between. */
export function railSpans(plan: SheetPlan, point: string): Span[] {
  const uses = plan.paths.flatMap((path) =>
    path.steps.flatMap((step) => {
      const last = step === path.steps[path.steps.length - 1];
      if (step.from === point) return [path.x];
      return step.to === point ? [last ? (path.climbX ?? path.x) : path.x] : [];
    }),
  );
  const kind = plan.sheet.rails.find((rail) => rail.point === point)?.kind;
  const sorted = [...new Set(uses)].sort((a, b) => a - b);
  const spans: Span[] = [];
  for (const x of sorted) {
    const open = spans[spans.length - 1];
    if (open === undefined || (kind === 'ground' && x - open.to > 2.2 * plan.sheet.pitch))
      spans.push({ from: x, to: x, users: [x] });
    else {
      open.to = x;
      open.users.push(x);
    }
  }
  return spans;
}

/** How far a rail goes on beyond its outer columns, units. */
export const OVERHANG = 34;
/** First feed rail and the step to the next, units. */
const TOP = 66;
const STEP = 34;
/** Room for the name and the label of a rail on the same level, units. */
const BETWEEN = 150;

/** Feeds of one name share a level where they don't meet; every other name has a level of its own. */
export function railHeights(plan: SheetPlan, ground: number): { at: Map<PointId, number>; lowestFeed: number } {
  const at = new Map<PointId, number>();
  const levels: { name: string; right: number }[] = [];
  for (const rail of plan.sheet.rails) {
    if (rail.kind === 'ground') {
      at.set(rail.point, ground);
      continue;
    }
    const spans = railSpans(plan, rail.point);
    const from = spans[0]?.from ?? 0;
    const right = spans[spans.length - 1]?.to ?? 0;
    let level = levels.findIndex((l) => l.name === rail.name && from - l.right > BETWEEN);
    if (level < 0) level = levels.push({ name: rail.name, right }) - 1;
    levels[level].right = right;
    at.set(rail.point, TOP + STEP * level);
  }
  return { at, lowestFeed: TOP + STEP * Math.max(0, levels.length - 1) };
}

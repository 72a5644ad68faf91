/** What leaves the sheet: the other wires of a splice, and the ends of paths that go on elsewhere. */
import type { PointId } from '../../parts/index.ts';
import type { Canvas } from './canvas.ts';
import { wireWidth } from './colours.ts';
import { leadsTo, pointElsewhere, trackOf } from './crossref.ts';
import { path, STROKE } from './ink.ts';
import type { LabelLine, Spot } from './labels.ts';
import type { Heights } from './place.ts';
import { drawnEdges, type SheetPlan } from './plan.ts';
import type { Corner, Routed } from './route.ts';
import type { DrawnWire } from './wires.ts';

/** Length of a stub, and of the arrow at its end, units. */
const STUB = 16;

/** Stubs of wires that meet the sheet's splices and are drawn elsewhere, or nowhere yet. */
export function splitOff(
  canvas: Canvas,
  plan: SheetPlan,
  others: readonly SheetPlan[],
  heights: Heights,
  routed: readonly Routed[],
): DrawnWire[] {
  const drawn = drawnEdges(plan);
  const stubs: DrawnWire[] = [];
  for (const [point, x] of plan.pointX) {
    const splice = plan.network.splices.get(point);
    if (splice === undefined || plan.elsewhere.has(point)) continue;
    const y = heights.y.get(point) ?? 0;
    const free = freeSides(routed, point);
    for (const id of splice.wires.filter((wire) => !drawn.has(`W:${wire}`))) {
      const edge = plan.network.edges.get(`W:${id}`);
      if (edge?.kind !== 'wire') continue;
      const side = free.shift() ?? { dx: 1, dy: 0 };
      const words = leadsTo(plan, id, point).join(' ');
      const where = trackOf(plan, others, `W:${id}`);
      stubs.push({ wire: edge.wire, line: stub(canvas, x, y, side, wireWidth(edge.wire.mm2)), stub: true });
      label(canvas, `W:${id}`, { x: x + side.dx * (STUB + 12), y: y + side.dy * (STUB + 12) }, side, words, where);
    }
  }
  return stubs;
}

/** Sides of a splice on which no wire of the sheet leaves it: right, left, below. */
function freeSides(routed: readonly Routed[], point: PointId): { dx: number; dy: number }[] {
  const taken = new Set<string>();
  for (const { step, line } of routed) {
    if (step.from === point) taken.add(direction(line[0], line[1]));
    if (step.to === point) taken.add(direction(line[line.length - 1], line[line.length - 2]));
  }
  return [
    { dx: 1, dy: 0 },
    { dx: -1, dy: 0 },
    { dx: 0, dy: 1 },
  ].filter(({ dx, dy }) => !taken.has(`${dx},${dy}`));
}

const direction = (a: Corner, b: Corner): string => `${Math.sign(b.x - a.x)},${Math.sign(b.y - a.y)}`;

function stub(canvas: Canvas, x: number, y: number, { dx, dy }: { dx: number; dy: number }, width: number): Corner[] {
  const end = { x: x + dx * STUB, y: y + dy * STUB };
  arrow(canvas, end.x + dx, end.y + dy, dx, dy);
  canvas.takeLine(x, y, end.x + dx * 5, end.y + dy * 5, width + 4);
  return [{ x, y }, end];
}

/** An open arrow whose shaft ends at x, y. */
function arrow(canvas: Canvas, x: number, y: number, dx: number, dy: number): void {
  const d = dx === 0 ? `M${x - 7} ${y}l7 ${8 * dy}l7 ${-8 * dy}` : `M${x} ${y - 7}l${8 * dx} 7l${-8 * dx} 7`;
  canvas.symbols.push(path(d, STROKE.contact));
  canvas.take(Math.min(x - 8, x + 8 * dx), Math.min(y - 8, y + 8 * dy), 16, 16);
}

function label(
  canvas: Canvas,
  of: string,
  at: Corner,
  { dx, dy }: { dx: number; dy: number },
  words: string,
  where: string | undefined,
): void {
  const lines: LabelLine[] = [{ text: words, size: 16 }];
  if (where !== undefined) lines.push({ text: where, size: 16, muted: true });
  const one: LabelLine[] = [{ text: where === undefined ? words : `${words} ${where}`, size: 16 }];
  const spots: Spot[] = [];
  const anchor = dx === 0 ? 'middle' : dx > 0 ? 'start' : 'end';
  for (const shift of [0, 4, -6, 10, -14, 18, -24, 26])
    spots.push({ x: at.x + dx * 2, y: at.y + 6 + dy * 8 + shift, anchor });
  for (const shift of [22, 28, -16, -22]) spots.push({ x: at.x - dx * 14, y: at.y + shift, anchor });
  canvas.label({ of, lines: dx === 0 ? lines : one, spots });
}

/** Where a path starts or ends at what another sheet has in full, or at a bus that this sheet doesn't run along the top. */
export function goOn(canvas: Canvas, plan: SheetPlan, others: readonly SheetPlan[], heights: Heights): void {
  for (const { steps, x, climbX } of plan.paths) {
    const first = steps[0];
    if (plan.elsewhere.has(first.from) && first.edge.kind === 'wire') {
      const y = heights.y.get(first.from) ?? 0;
      arrow(canvas, x, y - 18, 0, 1);
      canvas.symbols.push(path(`M${x} ${y - 26}V${y}`, STROKE.contact));
      const lines: LabelLine[] = [
        { text: `${first.from} ${pointElsewhere(others, first.from) ?? ''}`.trim(), size: 17, bold: true },
      ];
      canvas.label({ of: first.from, lines, spots: [{ x, y: y - 36, anchor: 'middle' }] });
    }
    const last = steps[steps.length - 1];
    if (climbX !== undefined || last.edge.kind !== 'wire' || plan.rails.has(last.to) || !deadEnd(plan, last.to))
      continue;
    const y = heights.y.get(last.to) ?? 0;
    const part = plan.network.partOf(last.to);
    if (part === undefined) continue;
    arrow(canvas, x, y + 6, 0, 1);
    const lines: LabelLine[] = [{ text: part.id, size: 17, bold: true }];
    const where = pointElsewhere(others, last.to);
    if (where !== undefined) lines.push({ text: where, size: 16, muted: true });
    canvas.label({ of: last.to, lines, spots: [{ x, y: y + 34, anchor: 'middle' }] });
  }
}

/** Does only one thing of the sheet end here? */
export function deadEnd(plan: SheetPlan, point: PointId): boolean {
  let ends = 0;
  for (const { steps } of plan.paths) for (const { from, to } of steps) if (from === point || to === point) ends++;
  return ends === 1;
}

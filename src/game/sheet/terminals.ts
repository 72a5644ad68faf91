/** Points on the sheet: terminals with their numbers, splices, studs. */
import type { PointId } from '../../parts/index.ts';
import { beside, type Canvas } from './canvas.ts';
import { deadEnd } from './exits.ts';
import { dot } from './ink.ts';
import type { Spot } from './labels.ts';
import { hasPlug, pinName, probeable, terminalOf } from './network.ts';
import type { Heights } from './place.ts';
import type { SheetPlan } from './plan.ts';

/** A terminal's point and its number beside it. */
export function terminal(canvas: Canvas, point: PointId, x: number, y: number, side: 'above' | 'below' | 'any'): void {
  canvas.point(point, x, y);
  const text = terminalOf(point).replace('-', '−');
  const shifts = side === 'above' ? [-6, 5, 15, -10] : side === 'below' ? [16, 19, 5, -6] : [5, 15, -6, -10, 18];
  canvas.label({ of: point, lines: [{ text, size: 15 }], spots: beside(x, y, 8, shifts, 'right') });
}

export function drawPoints(canvas: Canvas, plan: SheetPlan, heights: Heights): void {
  for (const [point, x] of plan.pointX) {
    if (plan.elsewhere.has(point)) continue;
    const y = heights.y.get(point) ?? 0;
    if (plan.network.splices.has(point)) drawSplice(canvas, point, x, y);
    else drawTerminal(canvas, plan, point, x, y);
  }
}

function drawSplice(canvas: Canvas, point: PointId, x: number, y: number): void {
  canvas.symbols.push(dot(x, y));
  canvas.point(point, x, y);
  const shifts = [6, -8, 20, -14];
  const spots: Spot[] = shifts.flatMap((shift) => beside(x, y, 11, [shift], 'left'));
  spots.push({ x, y: y - 12, anchor: 'middle' });
  canvas.label({ of: point, lines: [{ text: point, size: 16, bold: true }], spots });
}

function drawTerminal(canvas: Canvas, plan: SheetPlan, point: PointId, x: number, y: number): void {
  const part = plan.network.partOf(point);
  if (!probeable(plan.network, point)) {
    drawHidden(canvas, plan, point, x, y);
    return;
  }
  if (part === undefined || part.kind === 'fuse') {
    canvas.point(point, x, y);
    return;
  }
  // The number stands on the side of the part's own symbol: inside its frame.
  const framed = part.kind !== 'switch' || hasPlug(plan.network, part);
  const below = plan.paths.some(({ steps }) =>
    steps.some((s) =>
      framed ? s.to === point && s.edge.kind !== 'element' : s.to === point && s.edge.kind === 'element',
    ),
  );
  if (part.terminals.filter((t) => !part.hidden?.includes(t)).length === 1 && part.kind === 'general') {
    // A stud or a bar has one point: it goes by the part's name.
    canvas.point(point, x, y);
    if (deadEnd(plan, point)) return;
    const spots = beside(x, y, 11, [6, -3, 15, 22], 'right');
    canvas.label({ of: point, lines: [{ text: part.id, size: 17, bold: true }], spots });
    return;
  }
  const name = pinName(plan.network, point);
  if (name === undefined) {
    terminal(canvas, point, x, y, below ? 'below' : 'above');
    return;
  }
  canvas.point(point, x, y);
  const dy = below ? 20 : -9;
  const spots = beside(x, y, 8, [dy, dy + 4, dy - 4], 'right');
  canvas.label({ of: point, lines: [{ text: `${terminalOf(point)} ${name}`, size: 15 }], spots });
}

/** A junction inside a part: named, but no probe gets there. */
function drawHidden(canvas: Canvas, plan: SheetPlan, point: PointId, x: number, y: number): void {
  if (plan.network.partOf(point)?.kind === 'general') return;
  const spots = beside(x, y, 9, [5, 16, -6], 'right');
  canvas.label({ of: point, lines: [{ text: terminalOf(point), size: 15, muted: true }], spots });
}

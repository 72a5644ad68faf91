/** A schematic sheet from the book: current paths in columns, feeds above, ground below. */
import type { Book } from '../../machine/index.ts';
import type { PointId } from '../../parts/index.ts';
import type { SheetSpec } from '../../scenario/schema-sheet.ts';
import type { Box, Drawing, Layer } from '../drawing.ts';
import { Canvas, beside } from './canvas.ts';
import { drawDevices } from './devices.ts';
import { drawSteps, inkLine, terminal } from './draw.ts';
import { goOn, splitOff } from './exits.ts';
import { drawPaper, drawRails, MARGIN, paperSize, railSpans } from './frame.ts';
import { dot } from './ink.ts';
import { drawLabel, type PlacedLabel, placeLabels, type Spot } from './labels.ts';
import { pinName, probeable, terminalOf } from './network.ts';
import { type Heights, solveHeights } from './place.ts';
import { planSheet, type SheetPlan } from './plan.ts';
import { junctions, type Routed, routeAll } from './route.ts';
import { type DrawnWire, drawWires, labelWire, takeWire } from './wires.ts';

export interface LaidSheet {
  plan: SheetPlan;
  drawing: Drawing;
  labels: PlacedLabel[];
  /** Ground taken by strokes and points. */
  solids: Box[];
  wires: DrawnWire[];
}

/** Shift of the lane in which points are joined inside a device, from their terminals, units. */
const LINK = 16;

export function layoutSheet(book: Book, sheet: SheetSpec, others: readonly SheetSpec[] = []): Drawing {
  return laySheet(book, sheet, others).drawing;
}

/** The drawing with what it was made of: for finding things on it, and for proving it. */
export function laySheet(book: Book, sheet: SheetSpec, others: readonly SheetSpec[] = []): LaidSheet {
  const plan = planSheet(book, sheet);
  const beyond = others.filter((other) => other.id !== sheet.id).map((other) => planSheet(book, other));
  const heights = solveHeights(plan);
  const canvas = new Canvas();
  const routed = routeAll(plan, heights);
  const size = paperSize(plan, beyond, heights);
  const elements = drawSteps(canvas, plan, beyond, routed);
  const wires = [...wiresOf(routed), ...tiesOf(plan, heights), ...splitOff(canvas, plan, beyond, heights, routed)];
  for (const wire of wires) takeWire(canvas, wire);
  for (const corner of junctions(routed, plan.pointX)) canvas.symbols.push(dot(corner.x, corner.y));
  drawLinks(canvas, plan, heights);
  drawRails(canvas, plan, beyond, heights);
  drawPoints(canvas, plan, heights);
  drawDevices(canvas, plan, beyond, heights, elements);
  goOn(canvas, plan, beyond, heights);
  const tied = new Set(wires.map((w) => w.wire.id));
  for (const wire of wires) if (wire.line.length > 2 || long(wire) || tied.has(wire.wire.id)) labelWire(canvas, wire);
  const paper = drawPaper(canvas, plan, beyond, size, book.name);
  const inside = { x: MARGIN + 2, y: MARGIN + 2, w: size.width - 2 * MARGIN - 4, h: size.height - 2 * MARGIN - 4 };
  const labels = placeLabels([...canvas.labels, ...canvas.spare], canvas.solids, inside);
  const whole = { x: 0, y: 0, w: size.width, h: size.height };
  const layer = (id: string, tier: number, svg: string): Layer => ({ id, role: 'base', tier, svg, box: whole });
  const drawing: Drawing = {
    id: sheet.id,
    title: sheet.title,
    width: size.width,
    height: size.height,
    layers: [
      layer('paper', 0, paper + canvas.devices.join('')),
      layer('wires', 1, drawWires(wires)),
      layer('symbols', 2, canvas.symbols.join('') + canvas.marks.join('')),
      layer('labels', 3, labels.map(drawLabel).join('')),
    ],
    points: canvas.points,
    areas: [],
    controls: [],
    parts: [...canvas.parts].map(([part, box]) => ({ part, box })),
    ends: [],
  };
  return { plan, drawing, labels, solids: canvas.solids, wires };
}

function long({ line }: DrawnWire): boolean {
  return Math.abs(line[0].x - line[1].x) + Math.abs(line[0].y - line[1].y) > 40;
}

function wiresOf(routed: readonly Routed[]): DrawnWire[] {
  return routed.flatMap(({ step, line }) => (step.edge.kind === 'wire' ? [{ wire: step.edge.wire, line }] : []));
}

/** Wires from rail to rail run in the rails' own line, between the ends that face each other. */
function tiesOf(plan: SheetPlan, heights: Heights): DrawnWire[] {
  return plan.sheet.ties.flatMap((id) => {
    const edge = plan.network.edges.get(`W:${id}`);
    if (edge?.kind !== 'wire') throw new RangeError(`the book has no wire ${id}`);
    const y = heights.rail.get(edge.a) ?? 0;
    const [left, right] = [edge.a, edge.b]
      .map((point) => railSpans(plan, point)[0])
      .sort((p, q) => p.from - q.from);
    return [{ wire: edge.wire, line: [{ x: left.to + 20, y }, { x: right.from - 20, y }] }];
  });
}

function drawLinks(canvas: Canvas, plan: SheetPlan, heights: Heights): void {
  for (const [a, b] of plan.sheet.links) {
    const y = heights.y.get(a) ?? 0;
    const [xa, xb] = [plan.pointX.get(a) ?? 0, plan.pointX.get(b) ?? 0];
    // Terminals from which the path goes on downward are at a frame's lower edge: their lane is above them.
    const lower = plan.paths.some(({ steps }) => steps.some((s) => (s.from === a || s.from === b) && s.edge.kind === 'pin'));
    const lane = y + (lower ? -LINK : LINK);
    inkLine(canvas, [{ x: xa, y: lane }, { x: xb, y: lane }, { x: xb, y }]);
    canvas.symbols.push(dot(xa, lane));
  }
}

function drawPoints(canvas: Canvas, plan: SheetPlan, heights: Heights): void {
  for (const [point, x] of plan.pointX) {
    if (plan.elsewhere.has(point)) continue;
    const y = heights.y.get(point) ?? 0;
    if (plan.network.splices.has(point)) drawSplice(canvas, point, x, y);
    else drawTerminal(canvas, plan, point, x, y);
  }
}

function drawSplice(canvas: Canvas, point: PointId, x: number, y: number): void {
  canvas.symbols.push(dot(x, y));
  canvas.point(point, x, y, point);
  const spots: Spot[] = [...beside(x, y, 11, [6, -8, 20, -14], 'left'), { x, y: y - 12, anchor: 'middle' }];
  canvas.label({ of: point, lines: [{ text: point, size: 16, bold: true }], spots });
}

function drawTerminal(canvas: Canvas, plan: SheetPlan, point: PointId, x: number, y: number): void {
  const part = plan.network.partOf(point);
  if (!probeable(plan.network, point)) {
    drawHidden(canvas, plan, point, x, y);
    return;
  }
  if (part === undefined || part.kind === 'fuse') {
    canvas.point(point, x, y, point);
    return;
  }
  const below = plan.paths.some(({ steps }) => steps.some((s) => s.to === point && s.edge.kind !== 'element'));
  const name = pinName(plan.network, point);
  if (name === undefined) {
    terminal(canvas, point, x, y, below ? 'below' : 'above');
    return;
  }
  canvas.point(point, x, y, point);
  const dy = below ? 20 : -8;
  const spots = beside(x, y, 8, [dy, dy + 4, dy - 4], 'right');
  canvas.label({ of: point, lines: [{ text: `${terminalOf(point)} ${name}`, size: 15 }], spots });
}

/** A junction inside a part: named, but no probe gets there. */
function drawHidden(canvas: Canvas, plan: SheetPlan, point: PointId, x: number, y: number): void {
  const ends = plan.paths.flatMap(({ steps }) => steps.filter((s) => s.from === point || s.to === point)).length;
  if (ends > 2) canvas.symbols.push(dot(x, y));
  const spots = beside(x, y, 9, [5, 16, -6], 'right');
  canvas.label({ of: point, lines: [{ text: terminalOf(point), size: 15, muted: true }], spots });
}

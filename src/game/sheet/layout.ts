/** A schematic sheet from the book: current paths in columns, feeds above, ground below. */
import type { SheetSpec } from '../../scenario/schema-sheet.ts';
import type { Box, Drawing, Layer } from '../drawing.ts';
import { actuate } from './actuators.ts';
import { Canvas } from './canvas.ts';
import { drawDevices } from './devices.ts';
import { drawSteps, inkLine } from './draw.ts';
import { goOn, splitOff } from './exits.ts';
import { drawPaper, drawRails, MARGIN, paperSize } from './frame.ts';
import { dot } from './ink.ts';
import { drawLabel, type PlacedLabel, placeLabels } from './labels.ts';
import { type Heights, solveHeights } from './place.ts';
import { planSheet, type SheetBook, type SheetPlan } from './plan.ts';
import { OVERHANG, railSpans } from './rails.ts';
import { junctions, type Routed, routeAll } from './route.ts';
import { drawPoints } from './terminals.ts';
import { type DrawnWire, drawWires, labelWire, takeWire } from './wires.ts';
import { ENGLISH } from './words.ts';

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

export function layoutSheet(
  book: SheetBook,
  sheet: SheetSpec,
  others: readonly SheetSpec[] = [],
  words = ENGLISH,
): Drawing {
  return laySheet(book, sheet, others, words).drawing;
}

/** The drawing with what it was made of: for finding things on it, and for proving it. */
export function laySheet(
  book: SheetBook,
  sheet: SheetSpec,
  others: readonly SheetSpec[] = [],
  words = ENGLISH,
): LaidSheet {
  const plan = planSheet(book, sheet, words);
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
  drawDevices(canvas, plan, beyond, heights);
  actuate(canvas, plan, elements);
  goOn(canvas, plan, beyond, heights);
  for (const wire of wires) if (wire.stub === undefined) labelWire(canvas, wire);
  const paper = drawPaper(canvas, plan, beyond, size);
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
      layer('symbols', 2, canvas.symbols.join('')),
      ...[...canvas.plugs].flatMap(([id, { mated, parted }]): Layer[] => [
        { ...layer(`${id}-mated`, 2, mated), role: 'mated', when: [{ topic: 'parted', id, is: false }] },
        { ...layer(`${id}-parted`, 2, parted), role: 'parted', when: [{ topic: 'parted', id, is: true }] },
      ]),
      layer('marks', 2, canvas.marks.join('')),
      layer('labels', 3, labels.map((label) => drawLabel(label, canvas.tinted)).join('')),
    ],
    points: canvas.points,
    areas: [],
    controls: [],
    parts: [...canvas.parts].map(([part, box]) => ({ part, box })),
  };
  return { plan, drawing, labels, solids: canvas.solids, wires };
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
    const [left, right] = [edge.a, edge.b].map((point) => railSpans(plan, point)[0]).sort((p, q) => p.from - q.from);
    return [
      {
        wire: edge.wire,
        line: [
          { x: left.to + OVERHANG, y },
          { x: right.from - OVERHANG, y },
        ],
      },
    ];
  });
}

function drawLinks(canvas: Canvas, plan: SheetPlan, heights: Heights): void {
  for (const [a, b] of plan.sheet.links) {
    const y = heights.y.get(a) ?? 0;
    const [xa, xb] = [plan.pointX.get(a) ?? 0, plan.pointX.get(b) ?? 0];
    // Terminals from which the path goes on downward are at a frame's lower edge: their lane is above them.
    const lower = plan.paths.some(({ steps }) =>
      steps.some((s) => (s.from === a || s.from === b) && s.edge.kind === 'pin'),
    );
    const lane = y + (lower ? -LINK : LINK);
    inkLine(canvas, [
      { x: xa, y: lane },
      { x: xb, y: lane },
      { x: xb, y },
    ]);
    canvas.symbols.push(dot(xa, lane));
  }
}

/** Draws a sheet's steps: symbols, connectors, points and their labels. */
import type { PointId } from '../../parts/index.ts';
import { beside, type Canvas } from './canvas.ts';
import { trackOf } from './crossref.ts';
import { path, STROKE } from './ink.ts';
import type { LabelLine } from './labels.ts';
import type { Edge } from './network.ts';
import type { SheetPlan } from './plan.ts';
import { type Corner, lineText, type Routed } from './route.ts';
import { type SymbolKind, symbolOf } from './symbol-kind.ts';
import { plug, type SymbolPlace, symbol, THROW } from './symbols.ts';
import { terminal } from './terminals.ts';

type ElementEdge = Edge & { kind: 'element' };

/** Where the symbol of an element stands: for the device's frame and its actuator. */
export interface DrawnElement {
  edge: ElementEdge;
  kind: SymbolKind;
  place: SymbolPlace;
}

export function drawSteps(
  canvas: Canvas,
  plan: SheetPlan,
  others: readonly SheetPlan[],
  routed: readonly Routed[],
): DrawnElement[] {
  const drawn: DrawnElement[] = [];
  for (const { step, line } of routed) {
    const { edge } = step;
    if (edge.kind === 'pin') drawPin(canvas, edge, step.from, line);
    else if (edge.kind === 'element') drawn.push(drawElement(canvas, plan, others, edge, line));
  }
  return drawn;
}

function drawPin(canvas: Canvas, edge: Edge & { kind: 'pin' }, from: PointId, line: readonly Corner[]): void {
  const [a, b] = [line[0], line[line.length - 1]];
  const toDevice = edge.inline || edge.b !== from;
  plug(canvas, edge.connector, { x: a.x, top: Math.min(a.y, b.y), bottom: Math.max(a.y, b.y) }, toDevice);
  const y = (a.y + b.y) / 2 + 6;
  canvas.label({
    of: `X:${edge.connector}.${edge.pin}`,
    lines: [{ text: `${edge.connector}.${edge.pin}`, size: 17, bold: true }],
    spots: beside(a.x, y, 14, [0, 4, -4, 9, -9], 'right'),
  });
  canvas.part(edge.connector, { x: a.x - 12, y: y - 20, w: 24, h: 28 });
}

/** The upright part of a line that is longest: there the symbol stands. */
function upright(line: readonly Corner[]): [Corner, Corner] {
  let best: [Corner, Corner] = [line[0], line[line.length - 1]];
  let length = -1;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    if (a.x !== b.x || Math.abs(a.y - b.y) <= length) continue;
    length = Math.abs(a.y - b.y);
    best = [a, b];
  }
  return best;
}

function drawElement(
  canvas: Canvas,
  plan: SheetPlan,
  others: readonly SheetPlan[],
  edge: ElementEdge,
  line: Corner[],
): DrawnElement {
  const kind = symbolOf(edge);
  const [a, b] = upright(line);
  const place = { x: a.x, top: Math.min(a.y, b.y), bottom: Math.max(a.y, b.y) };
  const { part, element } = edge;
  const sister = part.kind === 'relay' && part.rest !== undefined;
  symbol(canvas, kind, place, { closed: atRest(plan, edge), change: sister && kind === 'contact' });
  if (line.length > 2) {
    canvas.symbols.push(path(lineText(line.slice(0, line.indexOf(a) + 1)) + lineText(line.slice(line.indexOf(b)))));
    for (let i = 1; i < line.length; i++) canvas.takeLine(line[i - 1].x, line[i - 1].y, line[i].x, line[i].y, 3);
  }
  canvas.part(part.id, { x: place.x - 24, y: place.top, w: 48, h: place.bottom - place.top });
  name(canvas, plan, others, { edge, kind, place });
  if (part.kind === 'relay' && part.rest !== undefined && kind === 'contact') {
    const other = element.id === 'nc' ? part.make : part.rest;
    terminal(canvas, `${part.id}.${other}`, place.x + THROW, place.bottom, 'below');
  }
  return { edge, kind, place };
}

/** Is this contact closed as the sheet draws it? */
function atRest(plan: SheetPlan, edge: ElementEdge): boolean {
  if (edge.part.kind === 'relay') return edge.element.id === 'nc';
  const { when } = edge.element;
  if (when === undefined || !('control' in when)) return false;
  return when.is.includes(plan.sheet.rest[when.control] ?? '');
}

function name(
  canvas: Canvas,
  plan: SheetPlan,
  others: readonly SheetPlan[],
  { edge, kind, place }: DrawnElement,
): void {
  const { part, element } = edge;
  const y = (place.top + place.bottom) / 2;
  const put = (lines: LabelLine[], gap: number, first: 'left' | 'right') =>
    canvas.label({
      of: part.id,
      lines,
      spots: beside(place.x, y + 6 - 9 * (lines.length - 1), gap, [0, -6, 6, -12, 12, -20, 20], first),
    });
  const title = { text: part.id, size: 18, bold: true };
  if (part.kind === 'fuse') put([title, { text: `${part.ratingAmps} A`, size: 16, muted: true }], 16, 'right');
  else if (part.kind === 'relay') {
    const coil = trackOf(plan, others, `${part.id}.coil`);
    const lines = kind === 'coil' || coil === undefined ? [title] : [title, { text: coil, size: 16, muted: true }];
    put(lines, kind === 'coil' ? 28 : 22, 'left');
  } else if (kind === 'battery') put([title, ...caption(plan, part.id)], 32, 'right');
  else if (kind === 'winding') put([{ text: element.id, size: 15, muted: true }], 14, 'right');
}

export function caption(plan: SheetPlan, part: string): LabelLine[] {
  const words = plan.sheet.captions[part];
  return (words?.split('\n') ?? []).map((text) => ({ text, size: 16, muted: true }));
}

/** Plain line of ink from column to column: points joined inside a device. */
export function inkLine(canvas: Canvas, line: Corner[]): void {
  canvas.symbols.push(path(lineText(line), STROKE.symbol));
  for (let i = 1; i < line.length; i++) canvas.takeLine(line[i - 1].x, line[i - 1].y, line[i].x, line[i].y, 3);
}

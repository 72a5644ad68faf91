/** The paper: border, rails, strip with track numbers and cross-references, title block. */
import type { Box } from '../drawing.ts';
import type { Canvas } from './canvas.ts';
import { contactList, pointElsewhere } from './crossref.ts';
import { dot, path, rect, STROKE } from './ink.ts';
import type { LabelLine, Spot } from './labels.ts';
import { ARROW } from './metrics.ts';
import type { Heights } from './place.ts';
import type { SheetPlan } from './plan.ts';

/** Border from the paper's edge; heights of the strip's rows and of the title block, units. */
export const MARGIN = 20;
const STRIP = 26;
const XREF = 18;
const TITLE = 44;
/** From the ground rail to the strip: the studs' symbols and names. */
const UNDER_RAIL = 58;

export interface PaperSize {
  width: number;
  height: number;
  strip: number;
  title: number;
}

export function paperSize(plan: SheetPlan, others: readonly SheetPlan[], heights: Heights): PaperSize {
  const last = plan.columns[plan.columns.length - 1];
  const rows = Math.max(0, ...plan.columns.map((c) => contactList(plan, others, c.track).length));
  const strip = heights.ground + UNDER_RAIL;
  const title = strip + STRIP + 26 + rows * XREF + 10;
  return { width: Math.ceil(last.right + 28 + MARGIN), height: title + TITLE + MARGIN, strip, title };
}

export function drawPaper(canvas: Canvas, plan: SheetPlan, others: readonly SheetPlan[], size: PaperSize, machine: string): string {
  const { width, height, strip, title } = size;
  const right = width - MARGIN;
  const edges = [plan.columns[0].left, ...plan.columns.map((c) => c.right)];
  for (const column of plan.columns) {
    const middle = (column.left + column.right) / 2;
    centred(canvas, `track ${column.track}`, middle, strip + 19, [{ text: String(column.track), size: 17, bold: true }]);
    centred(canvas, `track ${column.track}`, middle, strip + STRIP + 19, [{ text: plan.sheet.tracks[column.track - 1].title, size: 16 }]);
    contactList(plan, others, column.track).forEach((text, i) => {
      centred(canvas, `track ${column.track}`, middle, strip + STRIP + 19 + XREF * (i + 1), [{ text, size: 16, muted: true }]);
    });
  }
  const cells = titleBlock(canvas, plan, size, machine);
  return [
    rect(0, 0, width, height, 0, { stroke: 'none' }),
    rect(MARGIN, MARGIN, width - 2 * MARGIN, height - 2 * MARGIN, STROKE.contact, { fill: 'none' }),
    rect(MARGIN, strip, width - 2 * MARGIN, STRIP, STROKE.hair, { fill: '{paper2}' }),
    path(edges.map((x) => `M${x} ${strip}v${STRIP}`).join(''), STROKE.hair),
    path(`M${MARGIN} ${title}H${right}${cells.map((x) => `M${x} ${title}V${title + TITLE}`).join('')}`, STROKE.detail),
  ].join('');
}

function centred(canvas: Canvas, of: string, x: number, y: number, lines: LabelLine[]): void {
  canvas.label({ of, lines, spots: [{ x, y, anchor: 'middle' }] });
}

/** Cells from the right: sheet number, circuit, machine; what is left explains the signs. */
function titleBlock(canvas: Canvas, plan: SheetPlan, { width, title }: PaperSize, machine: string): number[] {
  const right = width - MARGIN;
  const cells = [right - 520 - 220 - 110 - 20, right - 520 - 130, right - 480, right - 110];
  const cell = (x: number, y: number, text: string, size: number, bold: boolean) =>
    canvas.label({ of: 'title', lines: [{ text, size, bold }], spots: [{ x: x + 14, y: title + y, anchor: 'start' }] });
  cell(cells[1], 29, machine.toUpperCase(), 22, true);
  cell(cells[2], 29, plan.sheet.title.toUpperCase(), 22, true);
  cell(cells[3], 29, `Sheet ${plan.sheet.number}`, 20, true);
  cell(cells[0], 19, `${ARROW} n   track n of this sheet`, 16, false);
  cell(cells[0], 38, `${ARROW} s.n   sheet s, track n`, 16, false);
  cell(MARGIN, 19, 'Wires: colour, number, mm².  Circles: points that take a probe.', 16, false);
  cell(MARGIN, 38, plan.sheet.restText, 16, false);
  return cells;
}

interface Span {
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
    if (open === undefined || (kind === 'ground' && x - open.to > 2.2 * plan.sheet.pitch)) spans.push({ from: x, to: x, users: [x] });
    else {
      open.to = x;
      open.users.push(x);
    }
  }
  return spans;
}

const OVERHANG = 34;

export function drawRails(canvas: Canvas, plan: SheetPlan, others: readonly SheetPlan[], heights: Heights): void {
  const named = new Set<string>();
  for (const rail of plan.sheet.rails) {
    const y = heights.rail.get(rail.point) ?? 0;
    const spans = railSpans(plan, rail.point);
    spans.forEach((span, i) => {
      const box: Box = { x: span.from - OVERHANG, y: y - 2, w: span.to - span.from + 2 * OVERHANG, h: 4 };
      canvas.symbols.push(path(`M${box.x} ${y}H${box.x + box.w}`, STROKE.rail, { 'stroke-linecap': 'butt' }));
      canvas.takeLine(box.x, y, box.x + box.w, y, STROKE.rail);
      for (const x of i === 0 ? span.users.slice(1) : span.users) canvas.symbols.push(dot(x, y));
      if (i === 0) canvas.point(rail.point, span.users[0], y, rail.point);
      if (rail.kind === 'ground') drawStud(canvas, plan, rail.point, span, y, i === 0);
      else {
        const from = pointElsewhere(others, rail.point);
        const text = [rail.label ?? '', from ?? ''].join(' ').trim();
        const spots: Spot[] = [{ x: box.x + 4, y: y - 10, anchor: 'start' }];
        canvas.label({ of: rail.point, lines: [{ text, size: 16, muted: true }], spots });
      }
      const key = `${rail.name} ${y}`;
      if (!named.has(key)) {
        const at: Spot = { x: rail.kind === 'ground' ? MARGIN + 14 : box.x - 8, y: y + 7, anchor: rail.kind === 'ground' ? 'start' : 'end' };
        canvas.label({ of: rail.point, lines: [{ text: rail.name, size: 20, bold: true }], spots: [at] });
      }
      named.add(key);
    });
  }
}

/** A stud under its rail: the lugs are the rail, the metal is the ground sign. */
function drawStud(canvas: Canvas, plan: SheetPlan, point: string, span: Span, y: number, first: boolean): void {
  const part = point.slice(0, point.indexOf('.'));
  const x = span.users[0];
  if (first) {
    canvas.symbols.push(path(`M${x} ${y}V${y + 12}M${x - 13} ${y + 12}H${x + 13}M${x - 8} ${y + 18}H${x + 8}M${x - 3} ${y + 24}H${x + 3}`));
    canvas.take(x - 14, y + 10, 28, 16);
    canvas.part(part, { x: x - 30, y: y - 6, w: 60, h: 52 });
  }
  const lines: LabelLine[] = [{ text: part, size: 17, bold: true }];
  const spots: Spot[] = [
    { x: first ? x : (span.from + span.to) / 2, y: y + (first ? 44 : 24), anchor: 'middle' },
  ];
  canvas.label({ of: part, lines, spots });
}


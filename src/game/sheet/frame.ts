/** The paper: border, rails, strip with track numbers and cross-references, title block. */
import type { Box } from '../drawing.ts';
import type { Canvas } from './canvas.ts';
import { contactList, pointElsewhere } from './crossref.ts';
import { dot, path, rect, STROKE } from './ink.ts';
import type { LabelLine, Spot } from './labels.ts';
import { ARROW, textWidth } from './metrics.ts';
import type { Heights } from './place.ts';
import type { SheetPlan } from './plan.ts';
import { OVERHANG, railSpans, type Span } from './rails.ts';

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
  const left = Math.max(textWidth(plan.words.legend, 16), textWidth(plan.sheet.restText, 16)) + 28;
  const least = titleWidths(plan).reduce((a, b) => a + b, left);
  return {
    width: Math.ceil(Math.max(last.right + 28, MARGIN + least) + MARGIN),
    height: title + TITLE + MARGIN,
    strip,
    title,
  };
}

export function drawPaper(canvas: Canvas, plan: SheetPlan, others: readonly SheetPlan[], size: PaperSize): string {
  const { width, height, strip, title } = size;
  const right = width - MARGIN;
  const edges = [plan.columns[0].left, ...plan.columns.map((c) => c.right)];
  for (const column of plan.columns) {
    const middle = (column.left + column.right) / 2;
    centred(canvas, `track ${column.track}`, middle, strip + 19, [
      { text: String(column.track), size: 17, bold: true },
    ]);
    centred(canvas, `track ${column.track}`, middle, strip + STRIP + 19, [
      { text: plan.sheet.tracks[column.track - 1].title, size: 16 },
    ]);
    contactList(plan, others, column.track).forEach((text, i) => {
      centred(canvas, `track ${column.track}`, middle, strip + STRIP + 19 + XREF * (i + 1), [
        { text, size: 16, muted: true },
      ]);
    });
  }
  canvas.tinted.push({ x: MARGIN, y: strip, w: width - 2 * MARGIN, h: STRIP });
  const cells = titleBlock(canvas, plan, size);
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

/** Signs, machine, circuit, sheet number. */
function titleWidths(plan: SheetPlan): number[] {
  const title = textWidth(plan.sheet.title.toUpperCase(), 22, true);
  const signs = Math.max(textWidth(plan.words.here, 16), textWidth(plan.words.beyond, 16)) + 40;
  return [signs, textWidth(plan.machine.toUpperCase(), 22, true) + 30, Math.max(title + 30, 240), 100];
}

/** Cells from the right: sheet number, circuit, machine; what is left explains the signs. */
function titleBlock(canvas: Canvas, plan: SheetPlan, { width, title }: PaperSize): number[] {
  const right = width - MARGIN;
  const cells = [right - titleWidths(plan).reduce((a, b) => a + b)];
  for (const w of titleWidths(plan).slice(0, -1)) cells.push(cells[cells.length - 1] + w);
  const cell = (x: number, y: number, text: string, size: number, bold: boolean) =>
    canvas.label({ of: 'title', lines: [{ text, size, bold }], spots: [{ x: x + 14, y: title + y, anchor: 'start' }] });
  cell(cells[1], 29, plan.machine.toUpperCase(), 22, true);
  cell(cells[2], 29, plan.sheet.title.toUpperCase(), 22, true);
  cell(cells[3], 29, `${plan.words.sheet} ${plan.sheet.number}`, 20, true);
  cell(cells[0], 19, `${ARROW} ${plan.words.here}`, 16, false);
  cell(cells[0], 38, `${ARROW} ${plan.words.beyond}`, 16, false);
  cell(MARGIN, 19, plan.words.legend, 16, false);
  cell(MARGIN, 38, plan.sheet.restText, 16, false);
  return cells;
}

export function drawRails(canvas: Canvas, plan: SheetPlan, others: readonly SheetPlan[], heights: Heights): void {
  const grounds = plan.sheet.rails.filter((rail) => rail.kind === 'ground');
  for (const rail of plan.sheet.rails) {
    const y = heights.rail.get(rail.point) ?? 0;
    const spans = railSpans(plan, rail.point);
    spans.forEach((span, i) => {
      const box: Box = { x: span.from - OVERHANG, y: y - 2, w: span.to - span.from + 2 * OVERHANG, h: 4 };
      canvas.symbols.push(path(`M${box.x} ${y}H${box.x + box.w}`, STROKE.rail, { 'stroke-linecap': 'butt' }));
      canvas.takeLine(box.x, y, box.x + box.w, y, STROKE.rail);
      for (const x of i === 0 ? span.users.slice(1) : span.users) canvas.symbols.push(dot(x, y));
      if (i === 0) canvas.point(rail.point, span.users[0], y);
      if (rail.kind === 'ground') drawStud(canvas, rail.point, span, y);
      else {
        const from = pointElsewhere(others, rail.point);
        const text = [rail.label ?? '', from ?? ''].join(' ').trim();
        const spots: Spot[] = [
          { x: box.x + 4, y: y - 11, anchor: 'start' },
          { x: box.x + box.w, y: y - 11, anchor: 'end' },
        ];
        canvas.label({ of: rail.point, lines: [{ text, size: 16, muted: true }], spots });
      }
      if (i > 0 || (rail.kind === 'ground' && rail !== grounds[0])) return;
      const at: Spot = { x: box.x - 8, y: y + 7, anchor: 'end' };
      canvas.label({ of: rail.point, lines: [{ text: rail.name, size: 20, bold: true }], spots: [at] });
    });
  }
}

/** A stud under its rail: the lugs are the rail, the metal is the ground sign. */
function drawStud(canvas: Canvas, point: string, span: Span, y: number): void {
  const part = point.slice(0, point.indexOf('.'));
  const x = span.users[0];
  const sign = `M${x} ${y}V${y + 12}M${x - 13} ${y + 12}H${x + 13}M${x - 8} ${y + 18}H${x + 8}M${x - 3} ${y + 24}H${x + 3}`;
  canvas.symbols.push(path(sign));
  canvas.take(x - 14, y + 10, 28, 16);
  canvas.part(part, { x: x - 30, y: y - 6, w: 60, h: 52 });
  canvas.label({
    of: part,
    lines: [{ text: part, size: 17, bold: true }],
    spots: [{ x, y: y + 44, anchor: 'middle' }],
  });
}

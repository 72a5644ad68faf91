/** Finds a place for every label: each names the spots where it may stand, best first. */
import type { Box } from '../drawing.ts';
import { escapeText, solid, tag } from './ink.ts';
import { ARROW, ARROW_WIDTH, SPACING, textWidth } from './metrics.ts';

export interface LabelLine {
  text: string;
  size: number;
  bold?: boolean;
  muted?: boolean;
}
export interface Spot {
  /** Baseline of the first line at the anchor. */
  x: number;
  y: number;
  anchor: 'start' | 'middle' | 'end';
  /** Reads upward, turned by a quarter to the left. */
  upright?: boolean;
}
export interface LabelRequest {
  /** Point, part or wire that it names. */
  of: string;
  lines: LabelLine[];
  spots: Spot[];
  /** May be left out if there is no room: a repetition. */
  spare?: boolean;
}
export interface PlacedLabel {
  of: string;
  lines: LabelLine[];
  spot: Spot;
  box: Box;
  /** Lies over something for want of a better spot. */
  clash: boolean;
}

export const LINE_HEIGHT = 17;
/** Height above and below the baseline, share of the type size: capitals and commas. */
const ASCENT = 0.74;
const DESCENT = 0.2;
/** Least distance from a label to anything else, units. */
const AIR = 2;

export function labelBox(lines: readonly LabelLine[], spot: Spot): Box {
  const w = Math.max(...lines.map((line) => textWidth(line.text, line.size, line.bold)));
  const up = lines[0].size * ASCENT;
  const h = up + LINE_HEIGHT * (lines.length - 1) + lines[lines.length - 1].size * DESCENT;
  const start = spot.anchor === 'start' ? 0 : spot.anchor === 'end' ? -w : -w / 2;
  if (!spot.upright) return { x: spot.x + start, y: spot.y - up, w, h };
  // Turned to the left, the line's start is its lower end.
  return { x: spot.x - up, y: spot.y - start - w, w: h, h: w };
}

export function overlap(a: Box, b: Box, air = 0): number {
  const w = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x) + air;
  const h = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y) + air;
  return w > 0 && h > 0 ? w * h : 0;
}

export function placeLabels(requests: readonly LabelRequest[], solids: readonly Box[], sheet: Box): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const { of, lines, spots, spare } of requests) {
    let best: PlacedLabel | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const spot of spots) {
      const box = labelBox(lines, spot);
      const inside = box.x >= sheet.x && box.y >= sheet.y && box.x + box.w <= sheet.x + sheet.w;
      let over = inside && box.y + box.h <= sheet.y + sheet.h ? 0 : 1e6;
      for (const solidBox of solids) over += overlap(box, solidBox, AIR);
      // Two labels over each other can't be read at all.
      for (const other of placed) over += 50 * overlap(box, other.box, AIR);
      if (over >= least) continue;
      least = over;
      best = { of, lines, spot, box, clash: over > 0 };
      if (over === 0) break;
    }
    if (best !== undefined && !(spare && best.clash)) placed.push(best);
  }
  return placed;
}

export function drawLabel({ lines, spot, box }: PlacedLabel, tinted: readonly Box[]): string {
  const mid = { x: box.x + box.w / 2, y: box.y + box.h / 2, w: 1, h: 1 };
  const halo = tinted.some((ground) => overlap(ground, mid) > 0) ? '{paper2}' : '{halo}';
  const body = lines.map((line, i) =>
    drawLine(line, spot.upright ? 0 : spot.x, (spot.upright ? 0 : spot.y) + i * LINE_HEIGHT, spot.anchor, halo),
  );
  if (!spot.upright) return body.join('');
  return tag('g', { transform: `translate(${spot.x} ${spot.y}) rotate(-90)` }, body.join(''));
}

function drawLine(line: LabelLine, x: number, y: number, anchor: Spot['anchor'], halo: string): string {
  const { text, size, bold } = line;
  const look = {
    'font-size': size,
    'font-weight': bold ? 600 : 500,
    'letter-spacing': SPACING,
    fill: line.muted ? '{ink2}' : '{ink}',
    'paint-order': 'stroke',
    stroke: halo,
    'stroke-width': 4,
    'stroke-linejoin': 'round',
  };
  if (!text.includes(ARROW)) return tag('text', { x, y, 'text-anchor': anchor, ...look }, escapeText(text));
  // The label face has no arrow: it is drawn between the words.
  const whole = textWidth(text, size, bold);
  let at = anchor === 'start' ? x : anchor === 'end' ? x - whole : x - whole / 2;
  let out = '';
  text.split(ARROW).forEach((words, i) => {
    if (i > 0) {
      const mid = y - size * 0.34;
      const half = size * 0.23;
      out += solid(`M${at + 1} ${mid - half}L${at + size * (ARROW_WIDTH - 0.06)} ${mid}L${at + 1} ${mid + half}Z`);
      at += ARROW_WIDTH * size;
    }
    const [trimmed, space] = [words.trim(), words.length - words.trimStart().length];
    const lead = textWidth(' '.repeat(space), size, bold);
    if (trimmed !== '') out += tag('text', { x: at + lead, y, ...look }, escapeText(trimmed));
    at += textWidth(words, size, bold);
  });
  return out;
}

/** Wires: casing under base colour, and their text along them, repeated on long runs. */
import type { WireSpec } from '../../machine/index.ts';
import type { Canvas } from './canvas.ts';
import { CASING, wireText, wireWidth } from './colours.ts';
import { tag } from './ink.ts';
import type { LabelRequest, Spot } from './labels.ts';
import { textWidth } from './metrics.ts';
import { type Corner, lineText } from './route.ts';

export interface DrawnWire {
  wire: WireSpec;
  line: Corner[];
  /** Only its beginning, at a splice; it is drawn in full elsewhere. */
  stub?: true;
}

/** A long wire carries its text again at this distance, units. */
const REPEAT = 230;
const SIZE = 16;
const SLIDES = [0, -4, 4, -8, 8, -13, 13, -24, 24, -38, 38, -54, 54, -72, 72, -95, 95];

/** Wires of one number run into each other: all their casings lie under all their colours. */
export function drawWires(wires: readonly DrawnWire[]): string {
  const numbers = new Map<string, DrawnWire[]>();
  for (const drawn of wires) numbers.set(drawn.wire.number, [...(numbers.get(drawn.wire.number) ?? []), drawn]);
  let out = '';
  for (const group of numbers.values()) {
    const stroke = ({ wire, line }: DrawnWire, colour: string, more: number) =>
      tag('path', { d: lineText(line), stroke: colour, 'stroke-width': wireWidth(wire.mm2) + more });
    const body =
      group.map((w) => stroke(w, '{casing}', CASING)).join('') +
      group.map((w) => stroke(w, `{w-${w.wire.colour}}`, 0)).join('');
    out += tag('g', { fill: 'none', 'stroke-linejoin': 'round' }, body);
  }
  return out;
}

export function takeWire(canvas: Canvas, { wire, line }: DrawnWire): void {
  for (let i = 1; i < line.length; i++) {
    canvas.takeLine(line[i - 1].x, line[i - 1].y, line[i].x, line[i].y, wireWidth(wire.mm2) + CASING);
  }
}

interface Run {
  a: Corner;
  b: Corner;
  length: number;
  upright: boolean;
}

export function labelWire(canvas: Canvas, drawn: DrawnWire): void {
  const { wire, line } = drawn;
  const runs: Run[] = [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    const length = Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    runs.push({ a, b, length, upright: a.x === b.x });
  }
  const need = textWidth(wireText(wire), SIZE) + 6;
  runs.sort(
    (p, q) =>
      Number(q.length >= need) - Number(p.length >= need) ||
      Number(q.upright) - Number(p.upright) ||
      q.length - p.length,
  );
  const fits = runs.filter((run) => run.length >= need);
  const times = (run: Run) => Math.max(1, Math.round(run.length / REPEAT));
  const sure = [runs[0], ...fits.slice(1)].flatMap((run) => spotsOn(run, wire, need, 0.5 / times(run)));
  canvas.label(request(wire, sure, false));
  for (const [i, run] of fits.entries()) {
    if (i > 0 && run.length < (run.upright ? 150 : REPEAT)) continue;
    for (let k = i === 0 ? 1 : 0; k < times(run); k++) {
      canvas.label(request(wire, spotsOn(run, wire, need, (k + 0.5) / times(run), 60), true));
    }
  }
}

function request(wire: WireSpec, spots: Spot[], spare: boolean): LabelRequest {
  return { of: `W:${wire.id}`, lines: [{ text: wireText(wire), size: SIZE }], spots, spare };
}

/** Left of an upright run reading upward, above a level one; then the other side; never past the run's ends. */
function spotsOn(run: Run, wire: WireSpec, need: number, at: number, reach = 1000): Spot[] {
  const half = wireWidth(wire.mm2) / 2 + CASING / 2;
  const x = run.a.x + (run.b.x - run.a.x) * at;
  const y = run.a.y + (run.b.y - run.a.y) * at;
  const room = Math.max(0, run.length - need) / 2;
  const slides = SLIDES.filter((s) => Math.abs(s) <= Math.max(room, 1) && Math.abs(s) <= reach);
  const out: Spot[] = [];
  if (run.upright) {
    for (const dx of [-half - 6.5, half + 4 + SIZE * 0.74]) {
      for (const s of slides) out.push({ x: x + dx, y: y + s, anchor: 'middle', upright: true });
    }
    for (const s of SLIDES) {
      if (Math.abs(s) > run.length / 2) continue;
      out.push({ x: x + half + 7, y: y + s + 5, anchor: 'start' }, { x: x - half - 7, y: y + s + 5, anchor: 'end' });
    }
    return out;
  }
  for (const dy of [-half - 6, half + 5 + SIZE * 0.74]) {
    for (const s of slides) out.push({ x: x + s, y: y + dy, anchor: 'middle' });
  }
  return out;
}

/** A wire's end off its terminal: bent aside, with its lug taped and a tag that names it. */
import type { Box, Drawing, Run } from './drawing.ts';
import { cutAt, looseLength, nearestEnd, type RunEnd } from './run-line.ts';
import type { StageView } from './view.ts';
import type { Spot } from './visible.ts';

/** Where a wire's end belongs and its base colour; the book knows, the drawing does not. */
export interface Landing {
  point: string;
  /** The colour's letters: RD, BK … */
  colour: string;
}
export type LandingOf = (end: string) => Landing | undefined;

interface At {
  x: number;
  y: number;
}

export interface Lifted {
  end: string;
  colour: string;
  width: number;
  /** Its drawn wire and which end of that it is; null where only the terminal is drawn. */
  run: RunEnd | null;
  /** Where the wire still lies as it was. */
  from: At;
  /** Over this spot it bends to its lug. */
  bend: At;
  lug: At;
  tag: Box;
}

/** The lug lies this far from the wire's old line, units. */
const ASIDE = 56;
const LUG = 13;
const WAYS = [0, 36, 72].flatMap((more) =>
  [1, -1].flatMap((side) => [0, 34].map((back) => ({ out: ASIDE + more, side, back }))),
);
const TAG = { w: 86, h: 28 };
/** An end without a drawn wire is drawn as a short tail that comes from its terminal's side, units. */
const TAIL = 26;

export function liftedEnds(drawing: Drawing, view: StageView, found: Spot[], landing: LandingOf | undefined): Lifted[] {
  const ends: Lifted[] = [];
  // What must stay in sight: words and points; and, more than these, tags and lugs of other ends.
  const tags: Box[] = [];
  const kept: Box[] = [
    ...(drawing.words ?? []),
    ...found.map(({ x, y, point }) => around(x, y, Math.min(point.r, 22))),
  ];
  for (const end of view.lifted) {
    const home = landing?.(end);
    const spot = home && found.find((s) => s.point.point === home.point || s.point.also === home.point);
    if (!home || !spot) continue;
    const made = lay(drawing, end, home.colour, spot, (box) => cover(box, kept) + 5 * cover(box, tags));
    ends.push(made);
    tags.push(made.tag, around(made.lug.x, made.lug.y, LUG + 4));
  }
  return ends;
}

function lay(drawing: Drawing, end: string, colour: string, spot: Spot, coverOf: (box: Box) => number): Lifted {
  const [wire] = end.split('@');
  const near = nearestEnd(drawing.runs ?? [], wire, spot.x, spot.y);
  const run = near && (drawing.runs ?? [])[near.index];
  const { from, ux, uy } = run
    ? cutAt(run, near.side, looseLength(run))
    : { from: { x: spot.x, y: spot.y - TAIL }, ux: 0, uy: 1 };
  // It lay along u, towards its terminal; now it goes on a little and bends to one side.
  const on = Math.min(22, (run ? looseLength(run) : TAIL) * 0.3);
  const bend = { x: from.x + ux * on, y: from.y + uy * on };
  let best: { lug: At; tag: Box; cost: number } | null = null;
  for (const { out, side, back } of WAYS) {
    const along = on / 2 - back;
    const lug = { x: from.x + ux * along - uy * side * out, y: from.y + uy * along + ux * side * out };
    const own = around(lug.x, lug.y, LUG);
    const middle = around((from.x + lug.x) / 2, (from.y + lug.y) / 2, 8);
    const cost = (out + back) / 20 + 2 * coverOf(own) + coverOf(middle) + outside(own, drawing);
    for (const tag of tagsAt(lug)) {
      const all = cost + coverOf(tag) + outside(tag, drawing);
      if (!best || all < best.cost) best = { lug, tag, cost: all };
    }
  }
  const { lug, tag } = best ?? { lug: bend, tag: around(bend.x, bend.y, LUG) };
  return { end, colour: run?.colour ?? colour, width: run?.width ?? 9, run: run ? near : null, from, bend, lug, tag };
}

function tagsAt({ x, y }: At): Box[] {
  const [w, h] = [TAG.w, TAG.h];
  const off = LUG + 7;
  return [
    { x: x + off, y: y - h / 2, w, h },
    { x: x - off - w, y: y - h / 2, w, h },
    { x: x - w / 2, y: y + off, w, h },
    { x: x - w / 2, y: y - off - h, w, h },
  ];
}

const around = (x: number, y: number, r: number): Box => ({ x: x - r, y: y - r, w: 2 * r, h: 2 * r });

/** How much of what must stay in sight a box covers: each thing at least a little, units of a side. */
function cover(box: Box, kept: Box[]): number {
  let sum = 0;
  for (const k of kept) {
    const w = Math.min(box.x + box.w, k.x + k.w) - Math.max(box.x, k.x) + 4;
    const h = Math.min(box.y + box.h, k.y + k.h) - Math.max(box.y, k.y) + 4;
    if (w > 0 && h > 0) sum += 10 + Math.sqrt(w * h);
  }
  return sum;
}

const outside = (b: Box, { width, height }: Drawing): number =>
  b.x < 12 || b.y < 12 || b.x + b.w > width - 12 || b.y + b.h > height - 12 ? 1000 : 0;

/** The loose lug takes a probe under the end's own name. */
export const looseEnd = ({ end, lug }: Lifted): Spot => ({ point: { point: end, ...lug, r: LUG }, ...lug });

/** What of the marked pieces is drawn otherwise: wires shortened, their old lugs and sleeves left out. */
export function withoutEnds(drawing: Drawing, ends: Lifted[]): Map<string, string> {
  const change = new Map<string, string>();
  const sides = new Map<number, (0 | 1)[]>();
  for (const { run } of ends) {
    if (!run) continue;
    sides.set(run.index, [...(sides.get(run.index) ?? []), run.side]);
    change.set(`fit${run.index}.${run.side}`, '');
  }
  for (const [index, off] of sides) {
    const run = drawing.runs?.[index];
    if (run) change.set(`run${index}`, lineSvg(shortened(run, off), run.width, run.colour, 'butt'));
  }
  return change;
}

function shortened(run: Run, off: (0 | 1)[]): string {
  const kept = off.reduce<Run>((left, side) => cutAt(left, side, looseLength(run)).rest, run);
  const pairs: string[] = [];
  for (let i = 0; i + 1 < kept.points.length; i += 2) pairs.push(`${kept.points[i]} ${kept.points[i + 1]}`);
  return `M${pairs.join('L')}`;
}

function lineSvg(d: string, width: number, colour: string, cap: 'butt' | 'round'): string {
  const line = `<path d="${d}" fill="none" stroke-linejoin="round" stroke-linecap="${cap}"`;
  return `${line} stroke="{line}" stroke-width="${width}"/>${line} stroke="{w-${colour}}" stroke-width="${width - 3}"/>`;
}

export function liftedSvg({ end, colour, width, from, bend, lug, tag }: Lifted): string {
  const [wire] = end.split('@');
  const way = `M${from.x} ${from.y}Q${bend.x} ${bend.y} ${lug.x} ${lug.y}`;
  const middle = tag.y + tag.h / 2;
  return (
    `${lineSvg(way, width, colour, 'round')}` +
    `<circle cx="${lug.x}" cy="${lug.y}" r="${LUG}" fill="{s2}" stroke="{line}" stroke-width="2"/>` +
    `<circle cx="${lug.x}" cy="${lug.y}" r="5.4" fill="{p3}" stroke="{line}" stroke-width="1.5"/>` +
    `<rect x="${tag.x}" y="${tag.y}" width="${tag.w}" height="${tag.h}" rx="3" fill="{b1}" stroke="{line}" stroke-width="2"/>` +
    `<text x="${tag.x + tag.w / 2}" y="${middle + 7}" font-size="20" font-weight="600" fill="#1f2a2e" text-anchor="middle">${wire} off</text>`
  );
}

/**
 * Wires as lines, so that an end that is taken off can be drawn off: the piece of a wire is marked in its layer, and so
 * are the sleeve and the lug on either end of it.
 */
import type { Box, Run } from '../../src/game/drawing.ts';
import { type Matrix, multiply, pathPoints, readTransform } from './bounds.ts';
import { type Context, emit, type Item, type Walk } from './items.ts';
import { type Element, elements } from './svg.ts';

const WIRE = /^wire-([^-]+)/;
export const isWire = (element: Element): boolean => WIRE.test(element.attributes.id ?? '');

/** Comments: they are not drawn, and a layer stays one piece of text. */
const marked = (name: string, svg: string): string => `<!--${name}-->${svg}<!--/${name}-->`;

export function emitWire(element: Element, context: Context, walk: Walk): void {
  const before = walk.items.length;
  emit(element, context, walk);
  const [, wire] = WIRE.exec(element.attributes.id ?? '') ?? [];
  const run = wire && !context.shift ? lineOf(element, wire, context.matrix) : null;
  if (!run) return;
  for (const item of walk.items.slice(before)) item.svg = marked(`run${walk.runs.length}`, item.svg);
  walk.runs.push(run);
}

function lineOf(element: Element, wire: string, around: Matrix): Run | null {
  const { transform, style = '', d } = element.attributes;
  const matrix = transform ? multiply(around, readTransform(transform)) : around;
  if (element.tag === 'g') {
    for (const child of elements(element)) {
      const found = lineOf(child, wire, matrix);
      if (found) return found;
    }
    return null;
  }
  const [, colour] = /stroke:var\(--w-(\w+)\)/.exec(style) ?? [];
  const [, width] = /stroke-width:([\d.]+)/.exec(style) ?? [];
  if (!colour || !width || !d || (d.match(/M/gi) ?? []).length !== 1) return null;
  const [a, b, c, e, f, g] = matrix;
  const drawn = pathPoints(d, 'along');
  const points: number[] = [];
  for (let i = 0; i + 1 < drawn.length; i += 2) {
    points.push(tenth(a * drawn[i] + c * drawn[i + 1] + f), tenth(b * drawn[i] + e * drawn[i + 1] + g));
  }
  // With its outline, which is a line of its own below it.
  const scale = Math.sqrt(Math.abs(a * e - b * c));
  return { wire, points, width: tenth((Number(width) + OUTLINE) * scale), colour };
}

/** Both edges of a wire's outline together, units. */
const OUTLINE = 3;
const tenth = (n: number): number => Math.round(n * 10) / 10;

/** A sleeve or lug lies wholly on the last stretch of its wire or a little beyond it, hardly wider than that, units. */
const FITTING = { before: 76, beyond: 92, wider: 11, widest: 16 };
/** Metal of lugs and the colours of sleeves; brass, clamps and housings belong to the part. */
const TOKENS = new Set(['s1', 's2', 's3', 'r1', 'r2', 'r3', 'u1', 'u2', 'u3', 'line']);
/** A bolt or stud sits in the middle of its point and is about as wide as high, units. */
const BOLT = { size: 44, off: 13, longer: 8 };

export function markFittings(walk: Walk): void {
  for (const item of walk.items) {
    if (!isFitting(item) || isBolt(item, walk)) continue;
    let [name, nearest] = ['', Infinity];
    walk.runs.forEach((run, i) => {
      for (const end of [0, 1] as const) {
        const aside = asideOf(run, end, item.box);
        if (aside < nearest) [name, nearest] = [`fit${i}.${end}`, aside];
      }
    });
    if (name !== '') item.svg = marked(name, item.svg);
  }
}

function isFitting({ svg, box, live, role, shift }: Item): boolean {
  if (live || shift || role !== 'base' || Math.max(box.w, box.h) > FITTING.before + FITTING.beyond) return false;
  if (svg.startsWith('<!--') || svg.includes('<text')) return false;
  const tokens = [...svg.matchAll(/\{([\w-]+)\}/g)].map(([, token]) => token);
  return tokens.length > 0 && tokens.every((token) => TOKENS.has(token));
}

const isBolt = ({ box }: Item, walk: Walk): boolean =>
  Math.max(box.w, box.h) <= BOLT.size &&
  Math.abs(box.w - box.h) <= BOLT.longer &&
  walk.points.some((p) => Math.hypot(box.x + box.w / 2 - p.x, box.y + box.h / 2 - p.y) < BOLT.off);

/** How far beside the end of a wire a thing lies, or infinitely far when it is not all on that end. */
function asideOf({ points, width }: Run, end: 0 | 1, { x, y, w, h }: Box): number {
  const n = points.length;
  const [ex, ey] = end === 0 ? [points[0], points[1]] : [points[n - 2], points[n - 1]];
  const [bx, by] = end === 0 ? [points[2], points[3]] : [points[n - 4], points[n - 3]];
  const length = Math.hypot(bx - ex, by - ey) || 1;
  const [ux, uy] = [(bx - ex) / length, (by - ey) / length];
  const most = Math.max(FITTING.widest, width / 2 + FITTING.wider);
  const corners = [x, y, x + w, y, x, y + h, x + w, y + h];
  for (let i = 0; i < corners.length; i += 2) {
    const along = (corners[i] - ex) * ux + (corners[i + 1] - ey) * uy;
    const off = Math.abs((corners[i] - ex) * uy - (corners[i + 1] - ey) * ux);
    if (along < -FITTING.beyond || along > Math.min(FITTING.before, length) || off > most) return Infinity;
  }
  return Math.abs((x + w / 2 - ex) * uy - (y + h / 2 - ey) * ux);
}

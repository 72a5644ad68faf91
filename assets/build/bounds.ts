/** Boxes of shapes, drawing units. Curves are bounded by their control points, arcs by points along them. */
import type { Box } from '../../src/game/drawing.ts';

/** a c e / b d f, as in SVG's matrix(a b c d e f). */
export type Matrix = [number, number, number, number, number, number];
export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

export function multiply(m: Matrix, n: Matrix): Matrix {
  return [
    m[0] * n[0] + m[2] * n[1],
    m[1] * n[0] + m[3] * n[1],
    m[0] * n[2] + m[2] * n[3],
    m[1] * n[2] + m[3] * n[3],
    m[0] * n[4] + m[2] * n[5] + m[4],
    m[1] * n[4] + m[3] * n[5] + m[5],
  ];
}

export function readTransform(source: string | undefined): Matrix {
  let matrix = IDENTITY;
  for (const [, name, list] of (source ?? '').matchAll(/(\w+)\(([^)]*)\)/g)) {
    const n = numbers(list);
    if (name === 'translate') matrix = multiply(matrix, [1, 0, 0, 1, n[0], n[1] ?? 0]);
    else if (name === 'scale') matrix = multiply(matrix, [n[0], 0, 0, n[1] ?? n[0], 0, 0]);
    else if (name === 'rotate') matrix = multiply(matrix, rotation(n[0], n[1] ?? 0, n[2] ?? 0));
    else throw new Error(`transform ${name} is not used in the drawings`);
  }
  return matrix;
}

export function rotation(degrees: number, x: number, y: number): Matrix {
  const c = Math.cos((degrees * Math.PI) / 180);
  const s = Math.sin((degrees * Math.PI) / 180);
  return [c, s, -s, c, x - c * x + s * y, y - s * x - c * y];
}

const numbers = (list: string): number[] => (list.match(/-?(?:\d+\.?\d*|\.\d+)(?:e-?\d+)?/g) ?? []).map(Number);

export function boxOf(points: number[], m: Matrix = IDENTITY, margin = 0): Box | null {
  if (points.length < 2) return null;
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const x = m[0] * points[i] + m[2] * points[i + 1] + m[4];
    const y = m[1] * points[i] + m[3] * points[i + 1] + m[5];
    [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  }
  return { x: x0 - margin, y: y0 - margin, w: x1 - x0 + 2 * margin, h: y1 - y0 + 2 * margin };
}

export function union(a: Box | null, b: Box | null): Box | null {
  if (!a || !b) return a ?? b;
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
}

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;

/** Numbers that each path command takes. */
const TAKES: Record<string, number> = { M: 2, L: 2, H: 1, V: 1, Q: 4, C: 6, A: 7, T: 2, S: 4 };

/** Points that bound a path (control points among them), or points along it, for the polygon of an area. */
export function pathPoints(d: string, kind: 'bound' | 'along' = 'bound'): number[] {
  const out: number[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  for (const [, letter, list] of d.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const command = letter.toUpperCase();
    if (command === 'Z') {
      [x, y] = [startX, startY];
      continue;
    }
    const n = command === 'A' ? arcNumbers(list) : numbers(list);
    const takes = TAKES[command];
    const relative = letter !== command;
    for (let i = 0; i + takes <= n.length; i += takes) {
      const [fromX, fromY] = [x, y];
      const [ox, oy] = relative ? [x, y] : [0, 0];
      if (command === 'H') x = ox + n[i];
      else if (command === 'V') y = oy + n[i];
      else [x, y] = [ox + n[i + takes - 2], oy + n[i + takes - 1]];
      if (command === 'A') out.push(...arcPoints(fromX, fromY, n.slice(i, i + 5), x, y));
      else if (command === 'Q' && kind === 'along')
        out.push(...quadraticPoints(fromX, fromY, ox + n[i], oy + n[i + 1], x, y));
      else if (takes > 2) for (let k = 0; k < takes - 2; k += 2) out.push(ox + n[i + k], oy + n[i + k + 1]);
      out.push(x, y);
      if (command === 'M' && i === 0) [startX, startY] = [x, y];
    }
  }
  return out;
}

function quadraticPoints(x0: number, y0: number, cx: number, cy: number, x1: number, y1: number): number[] {
  const out: number[] = [];
  for (let k = 1; k < 8; k += 1) {
    const [t, s] = [k / 8, 1 - k / 8];
    out.push(s * s * x0 + 2 * s * t * cx + t * t * x1, s * s * y0 + 2 * s * t * cy + t * t * y1);
  }
  return out;
}

/** The flags of an arc may be written without space after them. */
function arcNumbers(list: string): number[] {
  const out: number[] = [];
  const arc = /(-?[\d.]+)[\s,]+(-?[\d.]+)[\s,]+(-?[\d.]+)[\s,]+([01])[\s,]*([01])[\s,]*(-?[\d.]+)[\s,]*(-?[\d.]+)/g;
  for (const m of list.matchAll(arc)) out.push(...m.slice(1, 8).map(Number));
  return out;
}

/** Sixteen points along an arc, by its centre (SVG 1.1, F.6.5); the drawings turn no ellipse. */
function arcPoints(x1: number, y1: number, [rx, ry, , large, sweep]: number[], x2: number, y2: number): number[] {
  const [hx, hy] = [(x1 - x2) / 2 / rx, (y1 - y2) / 2 / ry];
  const half = Math.hypot(hx, hy);
  const rest = half < 1 ? Math.sqrt(1 / (half * half) - 1) * (large === sweep ? -1 : 1) : 0;
  const grow = Math.max(1, half);
  const [cx, cy] = [(x1 + x2) / 2 + rest * hy * rx, (y1 + y2) / 2 - rest * hx * ry];
  const from = Math.atan2((y1 - cy) / ry, (x1 - cx) / rx);
  let by = Math.atan2((y2 - cy) / ry, (x2 - cx) / rx) - from;
  if (sweep === 1 && by < 0) by += 2 * Math.PI;
  if (sweep === 0 && by > 0) by -= 2 * Math.PI;
  const out: number[] = [];
  for (let k = 1; k < 16; k += 1) {
    const a = from + (by * k) / 16;
    out.push(cx + Math.cos(a) * rx * grow, cy + Math.sin(a) * ry * grow);
  }
  return out;
}

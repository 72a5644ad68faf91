/** The two leads with their probes, the ring of what is pointed at. In pixels of the device, over both panes. */
import { type GameObjects, Math as PhaserMath } from 'phaser';
import { colourNumber } from './colours.ts';
import type { Theme } from './drawing.ts';

export interface Tip {
  x: number;
  y: number;
}

export interface LeadLook {
  theme: Theme;
  density: number;
  /** Where the lead comes in: the meter lies below the middle of the stage. */
  fromX: number;
  fromY: number;
}

const BODY = { red: ['r1', 'r2', 'r3'], black: ['u1', 'u2', 'u3'] } as const;

/** Length of tip and handle and widths, CSS pixels. */
const TIP = 15;
const HANDLE = 52;
const CABLE = 4.5;

export function drawLead(g: GameObjects.Graphics, which: 'red' | 'black', tip: Tip, look: LeadLook): void {
  const { density: k, theme, fromX, fromY } = look;
  const [light, body, shade] = BODY[which].map((name) => colourNumber(name, theme));
  const line = colourNumber('line', theme);
  // The handle leans towards where the lead comes from, never flat and never upside down.
  const lean = Math.max(-0.6, Math.min(0.6, Math.atan2(fromX - tip.x, Math.max(60 * k, fromY - tip.y))));
  const sway = which === 'red' ? lean + 0.16 : lean - 0.16;
  const [ux, uy] = [Math.sin(sway), Math.cos(sway)];
  const along = (d: number): [number, number] => [tip.x + ux * d * k, tip.y + uy * d * k];
  const [ex, ey] = along(TIP + HANDLE + 4);
  cable(g, [ex, ey], [ux, uy], look, [line, body, light]);
  stroke(g, [tip.x, tip.y], along(TIP), 5 * k, line);
  stroke(g, [tip.x, tip.y], along(TIP), 2.4 * k, colourNumber('s1', theme));
  tapered(g, along(TIP - 1), along(TIP + HANDLE + 5), [ux, uy], [6.4 * k, 5 * k], line);
  tapered(g, along(TIP + 0.6), along(TIP + HANDLE + 3.4), [ux, uy], [4.8 * k, 3.4 * k], body);
  const side = (d: number, off: number): [number, number] => [along(d)[0] - uy * off * k, along(d)[1] + ux * off * k];
  stroke(g, side(TIP + 10, 2.4), side(TIP + HANDLE, 1.6), 1.6 * k, light);
  stroke(g, side(TIP + 10, -2.6), side(TIP + HANDLE, -1.8), 1.6 * k, shade);
  tapered(g, along(TIP + 3), along(TIP + 8), [ux, uy], [8.6 * k, 8.6 * k], line);
  tapered(g, along(TIP + 4.2), along(TIP + 6.8), [ux, uy], [7.2 * k, 7.2 * k], body);
}

function cable(
  g: GameObjects.Graphics,
  [x, y]: [number, number],
  [ux, uy]: [number, number],
  { fromX, fromY, density: k }: LeadLook,
  [line, body, light]: number[],
): void {
  const drop = Math.max(40 * k, (fromY - y) * 0.55);
  const sag = Math.min(160 * k, Math.abs(fromX - x) * 0.3);
  const points: [number, number][] = [];
  const control = [
    x,
    y,
    x + ux * drop * 0.6,
    y + uy * drop * 0.6 + sag,
    fromX,
    fromY - drop * 0.35 + sag,
    fromX,
    fromY + 8 * k,
  ];
  for (let i = 0; i <= 48; i += 1) points.push(cubic(control, i / 48));
  polyline(g, points, (CABLE + 2.6) * k, line);
  polyline(g, points, CABLE * k, body);
  polyline(
    g,
    points.map(([px, py]) => [px - 0.9 * k, py - 0.6 * k]),
    1.1 * k,
    light,
  );
}

function cubic(c: number[], t: number): [number, number] {
  const s = 1 - t;
  const [a, b, d, e] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return [a * c[0] + b * c[2] + d * c[4] + e * c[6], a * c[1] + b * c[3] + d * c[5] + e * c[7]];
}

function stroke(
  g: GameObjects.Graphics,
  from: [number, number],
  to: [number, number],
  width: number,
  colour: number,
): void {
  polyline(g, [from, to], width, colour);
}

/** A band along the points, filled as one strip so that no joint shows. */
function polyline(g: GameObjects.Graphics, points: [number, number][], width: number, colour: number): void {
  const left: { x: number; y: number }[] = [];
  const right: { x: number; y: number }[] = [];
  points.forEach(([x, y], i) => {
    const [ax, ay] = points[Math.max(0, i - 1)];
    const [bx, by] = points[Math.min(points.length - 1, i + 1)];
    const length = Math.hypot(bx - ax, by - ay) || 1;
    const [nx, ny] = [(-(by - ay) / length) * (width / 2), ((bx - ax) / length) * (width / 2)];
    left.push({ x: x + nx, y: y + ny });
    right.push({ x: x - nx, y: y - ny });
  });
  g.fillStyle(colour);
  for (let i = 1; i < left.length; i += 1) {
    g.fillTriangle(left[i - 1].x, left[i - 1].y, left[i].x, left[i].y, right[i - 1].x, right[i - 1].y);
    g.fillTriangle(right[i - 1].x, right[i - 1].y, left[i].x, left[i].y, right[i].x, right[i].y);
  }
  g.fillCircle(points[0][0], points[0][1], width / 2);
}

function tapered(
  g: GameObjects.Graphics,
  from: [number, number],
  to: [number, number],
  [ux, uy]: [number, number],
  [near, far]: [number, number],
  colour: number,
): void {
  g.fillStyle(colour);
  const corner = ([x, y]: [number, number], w: number): PhaserMath.Vector2 =>
    new PhaserMath.Vector2(x - uy * w, y + ux * w);
  g.fillPoints([corner(from, near), corner(to, far), corner(to, -far), corner(from, -near)], true);
}

/** Pointed at, or found: a ring with a second one inside, so that it shows on any ground. */
export function drawRing(g: GameObjects.Graphics, { x, y }: Tip, radius: number, { theme, density }: LeadLook): void {
  g.lineStyle(4.5 * density, colourNumber('paper', theme), 1).strokeCircle(x, y, radius);
  g.lineStyle(2.5 * density, colourNumber('focus', theme), 1).strokeCircle(x, y, radius);
}

/** On the sheet the same point is marked, not touched by a second probe: a flag in the lead's colour with its letter. */
export function drawMark(
  g: GameObjects.Graphics,
  which: 'red' | 'black',
  { x, y }: Tip,
  { theme, density: k }: LeadLook,
): void {
  const casing = colourNumber('casing', theme);
  const body = colourNumber(BODY[which][1], theme);
  const side = which === 'red' ? 1 : -1;
  g.fillStyle(casing).fillCircle(x, y, 7.5 * k);
  g.fillStyle(colourNumber('print', theme)).fillCircle(x, y, 6 * k);
  g.fillStyle(body).fillCircle(x, y, 4.6 * k);
  tapered(g, [x, y], [x + side * 9 * k, y - 20 * k], [side * 0.41, -0.91], [1.6 * k, 1.6 * k], casing);
  const [fx, fy] = [x + side * 9 * k, y - 20 * k];
  g.fillStyle(casing).fillTriangle(fx, fy - 11 * k, fx, fy + 5 * k, fx + side * 21 * k, fy - 3 * k);
  g.fillStyle(body).fillTriangle(
    fx + side * 1.5 * k,
    fy - 8 * k,
    fx + side * 1.5 * k,
    fy + 2 * k,
    fx + side * 16 * k,
    fy - 3 * k,
  );
}

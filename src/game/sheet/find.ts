/** Where things stand on a sheet: to show them when they are looked for by name or number. */
import type { Box } from '../drawing.ts';
import type { LaidSheet } from './layout.ts';

/** Room shown round a point, units. */
const ROUND = 14;

/** Boxes of a part, connector, point, wire segment (`206A`) or wire number (`206`); none if the sheet hasn't got it. */
export function findOnSheet({ drawing, wires }: LaidSheet, name: string): Box[] {
  const part = drawing.parts.find((p) => p.part === name);
  if (part !== undefined) return [part.box];
  const point = drawing.points.find((p) => p.point === name);
  if (point !== undefined) return [{ x: point.x - ROUND, y: point.y - ROUND, w: 2 * ROUND, h: 2 * ROUND }];
  return wires
    .filter(({ wire, stub }) => stub === undefined && (wire.id === name || wire.number === name))
    .map(({ line }) => {
      const xs = line.map((corner) => corner.x);
      const ys = line.map((corner) => corner.y);
      const x = Math.min(...xs) - ROUND;
      const y = Math.min(...ys) - ROUND;
      return { x, y, w: Math.max(...xs) + ROUND - x, h: Math.max(...ys) + ROUND - y };
    });
}

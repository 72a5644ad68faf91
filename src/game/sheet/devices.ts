/** Frames round the terminals of one device, its name, and what moves its contacts. */
import type { PartSpec, PointId } from '../../parts/index.ts';
import type { Box } from '../drawing.ts';
import type { Canvas } from './canvas.ts';
import { pointElsewhere } from './crossref.ts';
import { caption } from './draw.ts';
import { path, rect, STROKE } from './ink.ts';
import { type LabelLine, LINE_HEIGHT, type Spot } from './labels.ts';
import { hasPlug, pinName, terminalOf } from './network.ts';
import type { Heights } from './place.ts';
import type { SheetPlan } from './plan.ts';

interface Device {
  part: PartSpec;
  points: PointId[];
  box: Box;
  /** Edge along which the box goes on elsewhere. */
  broken?: 'top' | 'bottom';
}

/** From the outer columns to the frame's sides; height of a box round a single terminal, units. */
const SIDE = 50;
const SINGLE = 62;
const BELOW_BUS = 30;

export function drawDevices(canvas: Canvas, plan: SheetPlan, others: readonly SheetPlan[], heights: Heights): void {
  for (const device of devices(plan, heights)) {
    const { box, part } = device;
    canvas.devices.push(frame(device));
    canvas.part(part.id, box);
    if (part.kind === 'controller') canvas.tinted.push(box);
    for (const [x1, y1, x2, y2] of edgesOf(box)) canvas.takeLine(x1, y1, x2, y2, 2);
    nameDevice(canvas, plan, device);
    for (const point of device.points) {
      if (!plan.elsewhere.has(point)) continue;
      const text = `${terminalOf(point)} ${pinName(plan.network, point) ?? ''} ${pointElsewhere(others, point) ?? ''}`;
      const y = (heights.y.get(point) ?? 0) + 20;
      const spots = Array.from({ length: 20 }, (_, i): Spot => ({ x: box.x + 12 + i * 16, y, anchor: 'start' }));
      canvas.label({ of: point, lines: [{ text: text.replace(/ +/g, ' '), size: 15 }], spots });
    }
  }
}

const edgesOf = ({ x, y, w, h }: Box): [number, number, number, number][] => [
  [x, y, x + w, y],
  [x, y + h, x + w, y + h],
  [x, y, x, y + h],
  [x + w, y, x + w, y + h],
];

/** Terminals of a part that are joined on this sheet stand in one frame. */
function devices(plan: SheetPlan, heights: Heights): Device[] {
  const found: Device[] = [];
  const pool = new Set([...plan.pointX.keys()].filter((point) => framed(plan, point)));
  for (const point of pool) {
    const part = plan.network.partOf(point);
    if (part === undefined) continue;
    const points = cluster(plan, point, part);
    for (const member of points) pool.delete(member);
    found.push(boxOf(plan, heights, part, points));
  }
  return found;
}

function framed(plan: SheetPlan, point: PointId): boolean {
  const part = plan.network.partOf(point);
  if (part === undefined) return false;
  return (
    part.kind === 'controller' || part.kind === 'starter' || (part.kind === 'switch' && hasPlug(plan.network, part))
  );
}

function cluster(plan: SheetPlan, start: PointId, part: PartSpec): PointId[] {
  const joined: (readonly [PointId, PointId])[] = [...plan.sheet.links];
  for (const { steps } of plan.paths) {
    for (const { edge } of steps) if (edge.kind === 'element' && edge.part === part) joined.push([edge.a, edge.b]);
  }
  const members = new Set([start]);
  const queue = [start];
  for (let point = queue.shift(); point !== undefined; point = queue.shift()) {
    for (const pair of joined) {
      if (!pair.includes(point)) continue;
      const next = pair[0] === point ? pair[1] : pair[0];
      if (members.has(next) || plan.network.partOf(next) !== part || !plan.pointX.has(next)) continue;
      members.add(next);
      queue.push(next);
    }
  }
  return [...members];
}

function boxOf(plan: SheetPlan, heights: Heights, part: PartSpec, points: PointId[]): Device {
  const xs = points.map((point) => plan.pointX.get(point) ?? 0);
  const ys = points.map((point) => heights.y.get(point) ?? 0);
  // A lead inside may stand beside its terminals' columns.
  for (const { steps, x } of plan.paths) {
    if (steps.some(({ edge }) => edge.kind === 'element' && edge.part === part && points.includes(edge.a))) xs.push(x);
  }
  const x = Math.min(...xs) - SIDE;
  const w = Math.max(...xs) + SIDE - x;
  const y = Math.min(...ys);
  const h = Math.max(...ys) - y;
  if (points.some((point) => plan.elsewhere.has(point))) {
    return { part, points, box: { x, y, w, h: h + BELOW_BUS }, broken: 'bottom' };
  }
  if (h > 0) return { part, points, box: { x, y, w, h } };
  const starts = plan.paths.some(({ steps }) => steps[0].from === points[0]);
  if (starts) return { part, points, box: { x, y: y - SINGLE, w, h: SINGLE }, broken: 'top' };
  return { part, points, box: { x, y, w, h: SINGLE }, broken: 'bottom' };
}

function frame({ part, box, broken }: Device): string {
  const { x, y, w, h } = box;
  if (part.kind !== 'controller') {
    return rect(x, y, w, h, STROKE.detail, { fill: 'none', 'stroke-dasharray': '10 5' });
  }
  if (broken === undefined) return rect(x, y, w, h, STROKE.device, { fill: '{paper2}' });
  const edge = broken === 'top' ? y : y + h;
  const far = broken === 'top' ? y + h : y;
  const teeth = Math.max(4, 2 * Math.round(w / 22));
  const step = w / teeth;
  let zigzag = `M${x} ${edge}`;
  for (let i = 1; i <= teeth; i++) zigzag += `L${x + i * step} ${edge + (i === teeth ? 0 : i % 2 === 0 ? 5 : -5)}`;
  return (
    path(`${zigzag}V${far}H${x}Z`, 0, { fill: '{paper2}', stroke: 'none' }) +
    path(zigzag, STROKE.detail) +
    path(`M${x} ${edge}V${far}H${x + w}V${edge}`, STROKE.device)
  );
}

/** The name stands where there is room in the frame, or else beside it. */
function nameDevice(canvas: Canvas, plan: SheetPlan, { part, box, broken }: Device): void {
  const words = box.h > SINGLE ? caption(plan, part.id) : [];
  const lines: LabelLine[] = [{ text: part.id, size: 18, bold: true }, ...words];
  const spots: Spot[] = [];
  for (let dy = broken === 'top' ? 26 : 17; dy < box.h - 8; dy += 8) {
    spots.push({ x: box.x + box.w - 8, y: box.y + dy, anchor: 'end' });
    spots.push({ x: box.x + 8, y: box.y + dy, anchor: 'start' });
  }
  spots.push(...middleSpots(box, lines));
  for (const dy of [20, 40, 60, 80]) {
    spots.push(
      { x: box.x + box.w + 8, y: box.y + dy, anchor: 'start' },
      { x: box.x - 8, y: box.y + dy, anchor: 'end' },
    );
  }
  canvas.label({ of: part.id, lines, spots });
}

/** Spots all over a frame, those near its middle first. */
function middleSpots(box: Box, lines: readonly LabelLine[]): Spot[] {
  const middle = box.y + box.h / 2 - (LINE_HEIGHT * (lines.length - 1)) / 2 + 6;
  const spots: Spot[] = [];
  for (let dx = 30; dx < box.w - 20; dx += 6) {
    for (let dy = 20; dy < box.h - 8; dy += 6) spots.push({ x: box.x + dx, y: box.y + dy, anchor: 'middle' });
  }
  const far = (spot: Spot) => Math.abs(spot.x - box.x - box.w / 2) + Math.abs(spot.y - middle);
  return spots.sort((a, b) => far(a) - far(b));
}

/** What moves or shows by which control, for the drawings of one machine: read from rules.json, never from code. */
import { readFileSync } from 'node:fs';
import type { DrawnControl, Motion, Pose } from '../../src/game/drawing.ts';
import type { Matrix } from './bounds.ts';

interface MotionSpec {
  control: string;
  pivot?: [number, number];
  turn?: Record<string, number>;
  dx?: Record<string, number>;
  dy?: Record<string, number>;
}
export interface ControlRule {
  control: string;
  part: string;
  group: string;
  kind: DrawnControl['kind'];
  margin?: number;
  values: string[];
  springs?: Record<string, string>;
}
export interface Rules {
  motions: Record<string, MotionSpec>;
  rockers: Record<string, { control: string; values: string[] }>;
  controls: ControlRule[];
  initial: Record<string, string>;
  shown: Record<string, { control: string; value: string }>;
  needles: Record<string, { readout: string; pivot: [number, number] }>;
  screens: string[];
  lamps: Record<string, string>;
  /** By drawing: what comes off in one piece and hangs lower while its access is open. */
  panels: Record<string, Record<string, PanelRule>>;
  opened: Record<string, Record<string, string[]>>;
  dropped: string[];
  /** Points of the book inside a part or without metal, which no drawing shows. */
  unreached: string[];
}

interface PanelRule {
  access: string;
  dx: number;
  dy: number;
  screws: string;
  hole: [number, number, number, number];
}

export const readRules = (file: string | URL): Rules => JSON.parse(readFileSync(file, 'utf8')) as Rules;

/** From rest to full scale of the cluster's gauges, degrees. */
const NEEDLE = { rest: 150, full: 390 };

/** Pivot and shifts are written in the group's own units; a panel may be drawn again at another size. */
export function motionOf(id: string, rules: Rules, matrix: Matrix): Motion | undefined {
  const motion = motionIn(id, rules);
  if (!motion) return undefined;
  const [a, b, c, d, e, f] = matrix;
  const poses = Object.entries(motion.poses).map(([value, { turn, dx, dy }]): [string, Pose] => {
    const pose: Pose = {};
    if (turn !== undefined) pose.turn = turn;
    if (dx !== undefined || dy !== undefined) {
      pose.dx = a * (dx ?? 0) + c * (dy ?? 0);
      pose.dy = b * (dx ?? 0) + d * (dy ?? 0);
    }
    return [value, pose];
  });
  const moved: Motion = { control: motion.control, poses: Object.fromEntries(poses) };
  const { pivot } = motion;
  if (pivot) moved.pivot = { x: a * pivot.x + c * pivot.y + e, y: b * pivot.x + d * pivot.y + f };
  return moved;
}

function motionIn(id: string, rules: Rules): Motion | undefined {
  const needle = rules.needles[id];
  if (needle) {
    const [x, y] = needle.pivot;
    const poses = { '0': { turn: NEEDLE.rest }, '1': { turn: NEEDLE.full } };
    return { control: needle.readout, pivot: { x, y }, poses };
  }
  const spec = rules.motions[id];
  if (!spec) return undefined;
  const poses: Record<string, Pose> = {};
  for (const key of ['turn', 'dx', 'dy'] as const) {
    for (const [value, amount] of Object.entries(spec[key] ?? {})) poses[value] = { ...poses[value], [key]: amount };
  }
  const pivot = spec.pivot && { x: spec.pivot[0], y: spec.pivot[1] };
  return pivot ? { control: spec.control, pivot, poses } : { control: spec.control, poses };
}

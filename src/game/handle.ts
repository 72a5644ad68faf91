/** Which value a touch on a handle means. A label or a gate's mark names it; on the handle itself a side steps. */
import type { DrawnControl, Pose } from './drawing.ts';

/** Within this share of its size from the middle, a turning handle is held by itself and not by a label. */
const ON_KNOB = 0.42;

export function valueAt(control: DrawnControl, current: string, x: number, y: number): string | null {
  const { values, springs, kind, box } = control;
  if (kind === 'push' || (values.length === 2 && kind === 'rock')) {
    return springs ? values[1] : (values.find((v) => v !== current) ?? null);
  }
  const poses = control.motion?.poses ?? {};
  const pivot = control.motion?.pivot;
  const [cx, cy] = [box.x + box.w / 2, box.y + box.h / 2];
  if (kind === 'turn' && pivot) {
    const isOnKnob = Math.hypot(x - pivot.x, y - pivot.y) < ON_KNOB * Math.min(box.w, box.h);
    if (!isOnKnob) return nearestTurn(values, poses, (Math.atan2(x - pivot.x, pivot.y - y) * 180) / Math.PI);
    const back = x < pivot.x ? step(values, current, -1) : null;
    return back ?? step(values, current, 1);
  }
  if (kind === 'slide' && pivot) {
    const tip = (value: string): number =>
      cy - Math.sin(((poses[value]?.turn ?? 0) * Math.PI) / 180) * (pivot.x - box.x);
    const meant = values.reduce((best, v) => (Math.abs(tip(v) - y) < Math.abs(tip(best) - y) ? v : best), values[0]);
    if (meant !== current) return meant;
    return step(values, current, y < tip(current) ? -1 : 1);
  }
  const isLevel = kind === 'slide' || box.w > box.h;
  return step(values, current, (isLevel ? x < cx : y < cy) ? -1 : 1);
}

function nearestTurn(values: string[], poses: Record<string, Pose>, angle: number): string {
  const off = (value: string): number => Math.abs((((poses[value]?.turn ?? 0) - angle + 540) % 360) - 180);
  return values.reduce((best, value) => (off(value) < off(best) ? value : best), values[0]);
}

function step(values: string[], current: string, by: 1 | -1): string | null {
  const next = values[values.indexOf(current) + by];
  return next ?? null;
}

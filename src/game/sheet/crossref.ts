/** Cross-references: in which track, of this sheet or another, something is drawn. */
import type { PointId } from '../../parts/index.ts';
import { ARROW } from './metrics.ts';
import { terminalOf } from './network.ts';
import type { SheetPlan } from './plan.ts';

/** `▸ 9` is a track of this sheet, `▸ 1.9` of sheet 1. */
export function trackOf(plan: SheetPlan, others: readonly SheetPlan[], edgeId: string): string | undefined {
  const here = plan.paths.find((path) => path.steps.some((step) => step.edge.id === edgeId));
  if (here !== undefined) return `${ARROW} ${here.track}`;
  for (const other of others) {
    const there = other.paths.find((path) => path.steps.some((step) => step.edge.id === edgeId));
    if (there !== undefined) return `${ARROW} ${other.sheet.number}.${there.track}`;
  }
  return undefined;
}

/** Where another sheet has a point of its own. */
export function pointElsewhere(others: readonly SheetPlan[], point: PointId): string | undefined {
  for (const other of others) {
    const track = other.elsewhere.has(point) ? undefined : other.pointTrack.get(point);
    if (track !== undefined) return `${ARROW} ${other.sheet.number}.${track}`;
  }
  return undefined;
}

/** Contacts of the coils in a track, for below its number: `30–87 ▸ 9`. */
export function contactList(plan: SheetPlan, others: readonly SheetPlan[], track: number): string[] {
  const lines: string[] = [];
  for (const path of plan.paths) {
    if (path.track !== track) continue;
    for (const { edge } of path.steps) {
      if (edge.kind !== 'element' || edge.part.kind !== 'relay' || edge.element.id !== 'coil') continue;
      for (const other of plan.network.edges.values()) {
        if (other.kind !== 'element' || other.part !== edge.part || other.element.id === 'coil') continue;
        const where = trackOf(plan, others, other.id);
        if (where !== undefined) lines.push(`${terminalOf(other.a)}–${terminalOf(other.b)} ${where}`);
      }
    }
  }
  return lines;
}

/** Parts that a wire leads to from a point, beyond plugs and splices. */
export function leadsTo(plan: SheetPlan, wireId: string, from: PointId): string[] {
  const { network } = plan;
  const edge = network.edges.get(`W:${wireId}`);
  if (edge === undefined) throw new RangeError(`the book has no wire ${wireId}`);
  const found = new Set<string>();
  const seen = new Set([from]);
  const queue = [edge.a === from ? edge.b : edge.a];
  for (let point = queue.shift(); point !== undefined; point = queue.shift()) {
    if (seen.has(point)) continue;
    seen.add(point);
    const part = network.partOf(point);
    if (part !== undefined) {
      found.add(part.id);
      continue;
    }
    for (const next of network.at.get(point) ?? []) queue.push(next.a === point ? next.b : next.a);
  }
  return [...found];
}

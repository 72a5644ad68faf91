/** Which repair can be done to what. */
import { hasLug, type Model } from '../machine/index.ts';
import type { Refusal } from './action.ts';
import type { Bench } from './bench.ts';
import { ownerOf, reachPart } from './reach.ts';

/** Wire cross-section up to which a section can be spliced, mm² (book, repairs). */
const SPLICE_MM2 = 6;

/** Repairs that make sense for a target, by the book's table. */
export function repairsFor(model: Model, target: string): string[] {
  if (target.startsWith('X:')) return ['clean', 're-pin'];
  if (target.startsWith('W:')) return wireRepairs(model, target.slice(2));
  const part = model.book.parts.find((p) => p.id === target);
  if (part === undefined) return [];
  if (part.kind === 'fuse') return ['fuse'];
  if (part.kind === 'general' && part.symbol === 'ground') return ['clean', 'tighten'];
  const verbs = part.replaceable ? ['replace'] : [];
  if (part.failures.some((f) => f.mode === 'misadjusted')) verbs.unshift('adjust');
  if (part.failures.some((f) => f.mode === 'discharged')) verbs.unshift('charge');
  return verbs;
}

function wireRepairs(model: Model, id: string): string[] {
  const wire = model.wires.get(id);
  if (wire === undefined) return [];
  const ends = hasLug(wire.from) || hasLug(wire.to);
  const whole = wire.mm2 <= SPLICE_MM2 && wire.harness !== 'BC' ? ['splice', 'reroute'] : ['replace-cable'];
  return ends ? ['clean', 'tighten', ...whole] : whole;
}

/** Can the repair be done from here? A wire is worked on from either end. */
export function reachTarget(model: Model, bench: Bench, target: string): Refusal | null {
  const { book } = model;
  if (target.startsWith('X:')) return reachPart(book, bench, target.slice(2).split('.')[0]);
  if (!target.startsWith('W:')) return reachPart(book, bench, target);
  const wire = model.wires.get(target.slice(2));
  if (wire === undefined) return { code: 'unknown', what: target };
  const ends = [wire.from, wire.to].filter((end) => !end.startsWith('SP'));
  const refusals = ends.map((end) => reachPart(book, bench, ownerOf(model, end)));
  return refusals.includes(null) ? null : (refusals[0] ?? null);
}

/** Is this the undoing of a stud or cable? Battery cables and what is bolted to them; what sits in a socket is not. */
export function isStudWork(model: Model, target: string): boolean {
  if (target.startsWith('W:')) return isCable(model, target.slice(2));
  const plug = target.startsWith('X:') ? target.slice(2).split('.')[0] : target;
  const connector = model.book.connectors.find((c) => c.id === plug);
  if (connector !== undefined) return connector.bolted ?? false;
  const part = model.book.parts.find((p) => p.id === target);
  if (part === undefined) return false;
  if (part.kind === 'fuse') return part.type === 'bolt-in';
  if (part.kind === 'relay') return part.bolted ?? false;
  return model.book.wires.some(
    (w) => isCable(model, w.id) && [w.from, w.to].some((end) => end.startsWith(`${part.id}.`)),
  );
}

/** Cables run from stud to stud: the battery cable harness. */
export function isCable(model: Model, wire: string): boolean {
  const spec = model.wires.get(wire);
  return spec !== undefined && spec.mm2 >= SPLICE_MM2 && hasLug(spec.from) && hasLug(spec.to);
}

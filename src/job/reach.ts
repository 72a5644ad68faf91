/** What can be touched from here with what is open. The screens ask; the attempt refuses by the same answers. */
import { type Book, hasLug, type Model } from '../machine/index.ts';
import type { Refusal } from './action.ts';
import type { Bench } from './bench.ts';

interface Spot {
  zone: string;
  access: string;
}

/** Zone and access step of a part, connector or ground. */
export function spotOf(book: Book, id: string): Spot | null {
  return book.parts.find((p) => p.id === id) ?? book.connectors.find((c) => c.id === id) ?? null;
}

const refuse = (code: Refusal['code'], what: string): Refusal => ({ code, what });

/** Can a hand get to a part or connector? Null when it can. */
export function reachPart(book: Book, bench: Bench, id: string): Refusal | null {
  const spot = spotOf(book, id);
  if (spot === null) return refuse('unknown', id);
  if (spot.zone !== bench.zone) return refuse('not-here', spot.zone);
  return isOpen(book, bench, spot.access) ? null : refuse('covered', spot.access);
}

/** A step that needs no work is always open. */
export function isOpen(book: Book, bench: Bench, access: string): boolean {
  const step = book.access.find((a) => a.id === access);
  return step === undefined || step.openMinutes === 0 || bench.opened.includes(access);
}

/** Part or connector at which a point lies: `X1.2.a` at X1, `206D@to` at K1. */
export function ownerOf(model: Model, point: string): string {
  const at = point.indexOf('@');
  if (at < 0) return point.slice(0, point.indexOf('.') < 0 ? undefined : point.indexOf('.'));
  const wire = model.wires.get(point.slice(0, at));
  const end = point.slice(at + 1) === 'from' ? wire?.from : wire?.to;
  return end === undefined ? point : ownerOf(model, end);
}

/** Can a lead be set on a point now? Null when it can. */
export function reachPoint(model: Model, bench: Bench, point: string): Refusal | null {
  const { book } = model;
  if (point !== book.reference && !model.pointIndex.has(point)) return refuse('unknown', point);
  if (point.includes('@')) {
    if (!bench.lifted.includes(point)) return refuse('not-probeable', point);
    return reachPart(book, bench, ownerOf(model, point));
  }
  if (point.startsWith('SP')) return refuse('not-probeable', point);
  const owner = ownerOf(model, point);
  const connector = book.connectors.find((c) => c.id === owner);
  if (connector !== undefined) return reachPart(book, bench, owner) ?? reachPin(book, bench, point);
  return reachTerminal(model, bench, owner, point);
}

function reachPin(book: Book, bench: Bench, point: string): Refusal | null {
  const [id, pinName, side] = point.split('.');
  const pin = book.connectors.find((c) => c.id === id)?.pins.find((p) => p.pin === pinName);
  if (pin === undefined) return refuse('unknown', point);
  if (bench.unplugged.includes(id)) return null;
  const open = pin.backProbe === true || (pin.backProbe === 'a' && side === 'a');
  return open ? null : refuse('must-be-parted', id);
}

/** A terminal of a part; one behind a device plug is reached at the plug, or with the plug off. */
function reachTerminal(model: Model, bench: Bench, owner: string, point: string): Refusal | null {
  const { book } = model;
  const part = book.parts.find((p) => p.id === owner);
  if (part === undefined) return refuse('unknown', point);
  if (part.hidden?.includes(point.slice(owner.length + 1))) return refuse('not-probeable', point);
  const plug = book.connectors.find((c) => c.kind === 'device' && c.pins.some((p) => p.b === point));
  if (plug === undefined) return reachPart(book, bench, owner);
  const at = reachPart(book, bench, plug.id);
  if (at !== null) return at;
  if (bench.unplugged.includes(plug.id)) return null;
  const pin = plug.pins.find((p) => p.b === point);
  return pin !== undefined && pin.backProbe !== false ? null : refuse('must-be-parted', plug.id);
}

/** Wire ends that can be taken off here: lugs at a part that can be reached. */
export function liftableAt(model: Model, part: string): string[] {
  const ends: string[] = [];
  for (const wire of model.book.wires) {
    if (hasLug(wire.from) && ownerOf(model, wire.from) === part) ends.push(`${wire.id}@from`);
    if (hasLug(wire.to) && ownerOf(model, wire.to) === part) ends.push(`${wire.id}@to`);
  }
  return ends;
}

/** All points that can be probed in a zone with what is open, in the book's order. */
export function pointsHere(model: Model, bench: Bench): string[] {
  const all = model.book.reference === undefined ? model.points : [model.book.reference, ...model.points];
  return all.filter((point) => reachPoint(model, bench, point) === null);
}

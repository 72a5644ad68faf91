/** Things of the book by the names that a technician says. */
import type { Book, Model, WireSpec } from '../../machine/index.ts';
import { t, wordFor } from './words.ts';

export const zoneName = (book: Book, id: string): string => book.zones.find((z) => z.id === id)?.name ?? id;

export function partName(book: Book, id: string): string {
  const thing = book.parts.find((p) => p.id === id) ?? book.connectors.find((c) => c.id === id);
  return thing === undefined ? id : t('names.part', { id, name: thing.name });
}

export const wireName = (wire: WireSpec): string => t('names.wire', { id: wire.id, colour: wire.colour });

const byPoint = new WeakMap<Model, Map<string, WireSpec[]>>();

/** Wires that end at a point; at a splice or stud there are several. */
export function wiresAt(model: Model, point: string): WireSpec[] {
  let index = byPoint.get(model);
  if (index === undefined) {
    index = new Map();
    for (const wire of model.book.wires) {
      for (const end of [wire.from, wire.to]) index.set(end, [...(index.get(end) ?? []), wire]);
    }
    byPoint.set(model, index);
  }
  return index.get(point) ?? [];
}

/** The point itself: `X1 pin 2, side a`, `K1 pin 86`, `GND1 lugs`. */
export function bareName(model: Model, point: string): string {
  const [owner, second, side] = point.split('.');
  const connector = model.book.connectors.find((c) => c.id === owner);
  if (connector !== undefined) {
    const values = { connector: owner, pin: second ?? '', side: side ?? '' };
    return connector.kind === 'inline' ? t('names.pinSide', values) : t('names.pin', values);
  }
  const part = model.book.parts.find((p) => p.id === owner);
  if (part?.kind === 'general' && part.symbol === 'ground') {
    if (second === 'L') return t('names.stackOfLugs', { part: owner });
    if (second === 'M') return t('names.metal', { part: owner });
  }
  const values = { part: owner, terminal: second ?? '' };
  return part?.kind === 'relay' ? t('names.relayPin', values) : t('names.terminal', values);
}

/** With the wire that a technician would name: `K1 pin 86, wire 206D VT`. */
export function pointName(model: Model, point: string): string {
  const at = point.indexOf('@');
  if (at >= 0) {
    const wire = model.wires.get(point.slice(0, at));
    if (wire === undefined) return point;
    const home = point.slice(at + 1) === 'from' ? wire.from : wire.to;
    return t('names.looseEnd', { wire: wireName(wire), point: bareName(model, home) });
  }
  const wires = wiresAt(model, point);
  if (wires.length === 0 || wires.length > 3) return bareName(model, point);
  return t('names.withWire', { point: bareName(model, point), wire: wires.map(wireName).join(', ') });
}

export function wireEndName(model: Model, end: string): string {
  const [id, side] = end.split('@');
  const wire = model.wires.get(id);
  if (wire === undefined) return end;
  return t('names.wireEnd', { wire: wireName(wire), point: bareName(model, side === 'from' ? wire.from : wire.to) });
}

/** A part, a wire `W:206D`, a pin `X:X3.3`, an access step or a place. */
export function targetName(model: Model, target: string): string {
  const { book } = model;
  if (target.startsWith('W:')) {
    const wire = model.wires.get(target.slice(2));
    return wire === undefined ? target : wireName(wire);
  }
  if (target.startsWith('X:')) {
    const [connector, pin] = target.slice(2).split('.');
    return t('names.pin', { connector, pin: pin ?? '' });
  }
  if (target.includes('@')) return wireEndName(model, target);
  if (target.includes('.')) return pointName(model, target);
  const step = book.access.find((a) => a.id === target);
  if (step !== undefined) return step.step;
  const zone = book.zones.find((z) => z.id === target);
  return zone === undefined ? partName(book, target) : zone.name;
}

export function controlName(book: Book, id: string): string {
  return book.controls.find((c) => c.id === id)?.name ?? id;
}

export function valueName(book: Book, control: string, value: string): string {
  return book.controls.find((c) => c.id === control)?.labels[value] ?? value;
}

/** Ways in which a target can fail, as the book lists them for it. */
export function modesOf(model: Model, target: string): string[] {
  const { book } = model;
  if (target.startsWith('W:')) return model.wires.get(target.slice(2))?.failures.map((f) => f.mode) ?? [];
  if (target.startsWith('X:')) {
    const id = target.slice(2).split('.')[0];
    return book.connectors.find((c) => c.id === id)?.failures.map((f) => f.mode) ?? [];
  }
  const part = book.parts.find((p) => p.id === target);
  const own = part?.failures.map((f) => f.mode) ?? [];
  const set = book.controls.some((c) => c.part === target && c.surroundings !== true) ? ['operator'] : [];
  return [...own, ...(part?.kind === 'fuse' ? ['blown'] : []), ...set].filter(
    (mode, i, all) => all.indexOf(mode) === i,
  );
}

export const modeName = (mode: string): string => wordFor('modes', mode);

/** Things of the book by the names that a technician says: the name first, the number that is printed on it in brackets. */
import { once } from '../../circuit/index.ts';
import { type Book, type ConnectorSpec, type Model, type WireSpec, wireModes } from '../../machine/index.ts';
import { sentence, t, wordFor } from './words.ts';

export const zoneName = (book: Book, id: string): string => book.zones.find((z) => z.id === id)?.name ?? id;

type Thing = Book['parts'][number] | ConnectorSpec;

const thingOf = (book: Book, id: string): Thing | undefined =>
  book.parts.find((p) => p.id === id) ?? book.connectors.find((c) => c.id === id);

/** As a heading, with the rating: `Fuse 5 A: crank request (F10)`. What the book explains in brackets stays in the manual. */
export function partName(book: Book, id: string): string {
  const thing = thingOf(book, id);
  if (thing === undefined) return id;
  const [first, ...more] = thing.name.split(', ');
  const name = 'cavities' in thing ? [plainName(book, id) ?? first, ...more].join(', ') : thing.name;
  return t('names.part', { id, name: sentence(name.replace(/ \([^)]*\)$/, '')) });
}

/** In a sentence: `start relay (K1)`, `crank request fuse (F10)`. */
export function inText(book: Book, id: string): string {
  if (book.splices.some((s) => s.id === id)) return t('names.splice', { id });
  const name = plainName(book, id);
  return name === null ? id : t('names.part', { id, name });
}

const RATING = / \d[\d.]* ?(?:V|Ah|A|kW|W|ohm)\b.*$| \d-speed$/;
/** A part's number behind its name in a fuse's purpose: `run power relay K3`. */
const NUMBERS = /(?<!\band) [A-Z]+\d+/g;

/** The name alone, as it is said in a sentence; null where the book has none. */
export function plainName(book: Book, id: string): string | null {
  const thing = thingOf(book, id);
  if (thing === undefined) return null;
  const name = thing.name.replace(/ \(.*$/, '');
  if (thing.kind === 'fuse') {
    const [purpose] = name.slice(name.indexOf(':') + 2).split(/[:,]/);
    const what = purpose.replace(NUMBERS, '');
    return thing.type === 'bolt-in' ? t('names.mainFuse', { what }) : t('names.fuse', { what });
  }
  if (!('cavities' in thing)) return lower(name.replace(RATING, '').split(',')[0]);
  const what = lower(name.split(',')[0]);
  return /(?:plug|connector|studs)$/.test(what) ? what : t('names.connector', { what });
}

/** A name of one's own, such as CAN or A1, keeps its letters. */
const lower = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name.slice(0, 1).toLowerCase() + name.slice(1) : name;

export const wireName = (wire: WireSpec): string => t('names.wire', { id: wire.id, colour: wire.colour });

const wiresByPoint = once((model: Model): Map<string, WireSpec[]> => {
  const index = new Map<string, WireSpec[]>();
  for (const wire of model.book.wires) {
    for (const end of [wire.from, wire.to]) index.set(end, [...(index.get(end) ?? []), wire]);
  }
  return index;
});

/** Wires that end at a point; at a splice or stud there are several. */
export const wiresAt = (model: Model, point: string): WireSpec[] => wiresByPoint(model).get(point) ?? [];

/** Where on its part a point lies: `terminal 86`, `pin 2, cab harness side`, `lugs`. */
export function localName(model: Model, point: string): string {
  const [owner, second = '', side] = point.split('.');
  const connector = model.book.connectors.find((c) => c.id === owner);
  if (connector !== undefined) {
    const words = { pin: second, side: sideName(model, connector, second, side) };
    return words.side === '' ? t('names.pin', words) : t('names.pinSide', words);
  }
  const part = model.book.parts.find((p) => p.id === owner);
  if (part?.kind === 'general' && part.symbol === 'ground') {
    if (second === 'L') return t('names.lugs');
    if (second === 'M') return t('names.metal');
  }
  // A fuse's first terminal is the fed one, in every fuse of a book.
  if (part?.kind === 'fuse') {
    const fed = second === part.terminals[0];
    if (part.type === 'bolt-in') return fed ? t('names.studFeed') : t('names.studLoad');
    return fed ? t('names.topFeed') : t('names.topLoad');
  }
  return part?.kind === 'controller'
    ? t('names.pin', { pin: second })
    : second === ''
      ? ''
      : t('names.terminal', { terminal: second });
}

/** A side of a connector between two harnesses is said by its harness; a device's plug has one side for the probe. */
export function sideName(model: Model, connector: ConnectorSpec, pin: string, side: string | undefined): string {
  if (connector.kind === 'device' || side === undefined) return '';
  const spec = connector.pins.find((p) => p.pin === pin) ?? connector.pins[0];
  const wire = model.wires.get(side === 'a' ? (spec?.a ?? '') : (spec?.b ?? ''));
  return model.book.harnesses.find((h) => h.id === wire?.harness)?.name ?? '';
}

/** The point itself: `start relay (K1) terminal 86`, `main frame stud in battery box (GND1) lugs`. */
export function bareName(model: Model, point: string): string {
  const [owner] = point.split('.');
  return t('names.at', { part: inText(model.book, owner), spot: localName(model, point) }).trim();
}

/** As tables of the manual print it: `K1 86`, `X1 2`. */
export const printedName = (point: string): string => point.split('.').slice(0, 2).join(' ');

/** With the wire that a technician would name: `start relay (K1) terminal 86, wire 206D VT`. */
export function pointName(model: Model, point: string): string {
  const at = point.indexOf('@');
  if (at >= 0) {
    const wire = model.wires.get(point.slice(0, at));
    if (wire === undefined) return point;
    const home = point.slice(at + 1) === 'from' ? wire.from : wire.to;
    return t('names.looseEnd', { wire: wireName(wire), point: bareName(model, home) });
  }
  const wires = wiresText(model, point);
  return wires === '' ? bareName(model, point) : t('names.withWire', { point: bareName(model, point), wire: wires });
}

/** The wires at a point, where they are few enough to say which point is meant. */
export function wiresText(model: Model, point: string): string {
  const wires = wiresAt(model, point);
  return wires.length > 3 ? '' : wires.map(wireName).join(', ');
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
  if (target.startsWith('X:')) return bareName(model, target.slice(2));
  if (target.includes('@')) return wireEndName(model, target);
  if (target.includes('.')) return pointName(model, target);
  const step = book.access.find((a) => a.id === target);
  if (step !== undefined) return step.step;
  const zone = book.zones.find((z) => z.id === target);
  return zone === undefined ? inText(book, target) : zone.name;
}

/** What is done to close up again. */
export const closingName = (book: Book, access: string): string =>
  book.access.find((a) => a.id === access)?.undo ?? access;

export function controlName(book: Book, id: string): string {
  return book.controls.find((c) => c.id === id)?.name ?? id;
}

export function valueName(book: Book, control: string, value: string): string {
  return book.controls.find((c) => c.id === control)?.labels[value] ?? value;
}

/** Ways in which a target can fail, as the book lists them for it. */
export function modesOf(model: Model, target: string): string[] {
  const { book } = model;
  if (target.startsWith('W:')) {
    const wire = model.wires.get(target.slice(2));
    return wire === undefined ? [] : wireModes(wire);
  }
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

/** All names that a book defines, so that every use of one can be looked up. */

import type { Book, ConnectorSpec, WireSpec } from '../machine/book.ts';
import { hasLug, lugPoint } from '../machine/index.ts';
import { contentOf, type PartContent, type PartSpec } from '../parts/index.ts';
import type { Origins } from './origins.ts';
import type { Problem } from './problem.ts';

export interface Names {
  book: Book;
  origins: Origins;
  parts: ReadonlyMap<string, PartSpec>;
  /** What each part brings to the network and the statechart, in the order of `book.parts`. */
  contents: readonly PartContent[];
  /** `K1.86` to its part. */
  terminals: ReadonlyMap<string, PartSpec>;
  connectors: ReadonlyMap<string, ConnectorSpec>;
  wires: ReadonlyMap<string, WireSpec>;
  /** Every point that a wire may end at: terminals, pin sides, splices. */
  ends: ReadonlySet<string>;
  /** Every point of the network: those, and the lugs of wires. */
  points: ReadonlySet<string>;
  elements: ReadonlySet<string>;
  /** States by region. */
  regions: ReadonlyMap<string, readonly string[]>;
  /** Values by control. */
  controls: ReadonlyMap<string, readonly string[]>;
  quantities: ReadonlySet<string>;
  zones: ReadonlySet<string>;
  access: ReadonlySet<string>;
  harnesses: ReadonlySet<string>;
  precautions: ReadonlySet<string>;
  /** Wires by the point at which they end. */
  landed: ReadonlyMap<string, readonly WireSpec[]>;
}

/** Regions and quantities that the machine adds to every book. */
const ENGINE_STATES = ['stopped', 'running'];
const OWN_QUANTITIES = ['rpm'];

const byId = <T extends { id: string }>(list: readonly T[]): Map<string, T> => new Map(list.map((x) => [x.id, x]));
const ids = (list: readonly { id: string }[]): Set<string> => new Set(list.map((x) => x.id));

export function namesOf(book: Book, origins: Origins): Names {
  const contents = book.parts.map(contentOf);
  const terminals = new Map(book.parts.flatMap((p) => p.terminals.map((t) => [`${p.id}.${t}`, p] as const)));
  const pinSides = book.connectors.flatMap((c) =>
    c.pins.flatMap((p) => [`${c.id}.${p.pin}.a`, ...(c.kind === 'inline' ? [`${c.id}.${p.pin}.b`] : [])]),
  );
  const ends = new Set([...terminals.keys(), ...pinSides, ...book.splices.map((s) => s.id)]);
  const lugs = book.wires.flatMap((w) =>
    (['from', 'to'] as const).filter((s) => hasLug(w[s])).map((s) => lugPoint(w.id, s)),
  );
  const regions = [...contents.flatMap((c) => c.regions), ...book.regions];
  return {
    book,
    origins,
    parts: byId(book.parts),
    contents,
    terminals,
    connectors: byId(book.connectors),
    wires: byId(book.wires),
    ends,
    points: new Set([...ends, ...lugs]),
    elements: new Set([
      ...contents.flatMap((c, i) => c.elements.map((e) => `${book.parts[i].id}.${e.id}`)),
      ...book.wires.map((w) => `W:${w.id}`),
      ...lugs.map((lug) => `L:${lug}`),
      ...book.connectors.flatMap((c) => c.pins.map((p) => `X:${c.id}.${p.pin}`)),
    ]),
    regions: new Map([['engine', ENGINE_STATES], ...regions.map((r) => [r.id, r.states] as const)]),
    controls: new Map(book.controls.map((c) => [c.id, c.values])),
    quantities: new Set([...OWN_QUANTITIES, ...book.quantities.map((q) => q.id)]),
    zones: ids(book.zones),
    access: ids(book.access),
    harnesses: ids(book.harnesses),
    precautions: ids(book.precautions),
    landed: landedOn(book),
  };
}

function landedOn(book: Book): Map<string, WireSpec[]> {
  const landed = new Map<string, WireSpec[]>();
  for (const wire of book.wires) {
    for (const end of [wire.from, wire.to]) landed.set(end, [...(landed.get(end) ?? []), wire]);
  }
  return landed;
}

/** Collects problems of records; `known` asks for a name in a set and says what kind of name it should be. */
export class Finder {
  readonly problems: Problem[] = [];
  private readonly origins: Origins;

  constructor(origins: Origins) {
    this.origins = origins;
  }

  report(record: object, inner: string, code: string, found: string, expected: string): void {
    this.problems.push(this.origins.at(record, inner, code, found, expected));
  }

  reportKey(key: string, inner: string, code: string, found: string, expected: string): void {
    this.problems.push(this.origins.atKey(key, inner, code, found, expected));
  }

  known(record: object, inner: string, name: string, set: { has(name: string): boolean }, what: string): boolean {
    if (set.has(name)) return true;
    this.report(record, inner, `unknown-${what}`, name, `${/^[aeo]/.test(what) ? 'an' : 'a'} ${what} of this book`);
    return false;
  }

  eachKnown(
    record: object,
    inner: string,
    names: readonly string[],
    set: { has(n: string): boolean },
    what: string,
  ): void {
    for (const [i, name] of names.entries()) this.known(record, `${inner}[${i}]`, name, set, what);
  }

  /** Ids that must differ among these records. */
  unique(records: readonly object[], idOf: (record: never) => string, field: string, what: string): void {
    const seen = new Set<string>();
    for (const record of records) {
      const id = idOf(record as never);
      if (seen.has(id)) this.report(record, field, 'duplicate-id', id, `an id that no other ${what} has`);
      seen.add(id);
    }
  }
}

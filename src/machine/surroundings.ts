/** What lies beside a wire where it runs: the metal that it can rub on, the wires next to it, a wire with a lasting feed. */
import { once, REFERENCE } from '../circuit/index.ts';
import type { PointId } from '../parts/index.ts';
import type { Book, HarnessSpec, WireSpec } from './book.ts';
import { compileGuard } from './guard.ts';
import { type Model, nodeOf } from './model.ts';
import { restingState } from './state.ts';

/** Another wire, and where along it the two lie together. Shares of their lengths. */
export interface Neighbour {
  wire: string;
  at: number;
  toAt: number;
}

export interface Surroundings {
  /** Metal of the ground stud where the wire runs. */
  metal(wire: WireSpec): PointId;
  /** Wires in the next cavity of a plug, else the next in the bundle; each pair is told once, at its first wire. */
  beside(wire: WireSpec): readonly Neighbour[];
  /** A wire of the same harness that has battery volts with everything off; none where the wire has them itself. */
  feed(wire: WireSpec): WireSpec | undefined;
}

/** Two wires lie together close behind the plug that holds them both, at this share of their lengths. */
const BEHIND_PLUG = 0.1;
/** In a bundle, halfway. */
const MIDDLE = 0.5;
/** More than this is not a feed, ohms: a load or an input stage. */
const FEED_OHMS = 1;

export const surroundingsOf: (model: Model) => Surroundings = once((model) => {
  const { book } = model;
  const pairs = pairsOf(model);
  addBundled(model, pairs);
  const fed = fedWires(model);
  const feedsIn = (harness: string) => book.wires.filter((w) => w.harness === harness && fed.has(w.id));
  const feeds = new Map(book.harnesses.map(({ id }) => [id, feedsIn(id)]));
  return {
    metal: (wire) => metalOf(book, wire),
    beside: (wire) => pairs.get(wire.id) ?? [],
    feed: (wire) => (fed.has(wire.id) ? undefined : nearest(wire, feeds.get(wire.harness) ?? [])),
  };
});

/** The one with which it shares a plug or part, else the first. */
function nearest(wire: WireSpec, feeds: readonly WireSpec[]): WireSpec | undefined {
  const ends = holdersOf(wire);
  return feeds.find((feed) => holdersOf(feed).some((holder) => ends.includes(holder))) ?? feeds[0];
}

/** Has it insulation that fails, by the book? */
const canRub = (wire: WireSpec): boolean => wire.failures.some((f) => f.mode === 'short_gnd');

/** Plugs, parts and splices at which a wire ends. */
const holdersOf = ({ from, to }: WireSpec): string[] => [from, to].map((end) => end.split('.')[0]);

/** Of the places that its harness names first; a harness that may lie anywhere lies where the wire ends. */
function metalOf(book: Book, wire: WireSpec): PointId {
  const harness = book.harnesses.find((h) => h.id === wire.harness);
  const zones = harness === undefined || isAnywhere(book, harness) ? endZones(book, wire) : harness.zones;
  const roads = zones.flatMap(
    (zone) => book.harnesses.find((h) => h.zones.includes(zone) && !isAnywhere(book, h)) ?? [],
  );
  const stud =
    studIn(book, zones) ??
    studIn(
      book,
      roads.flatMap((h) => h.zones),
    ) ??
    book.grounds[0]?.part;
  return stud === undefined ? book.reference : `${stud}.M`;
}

const isAnywhere = (book: Book, harness: HarnessSpec): boolean => harness.zones.length === book.zones.length;

function endZones(book: Book, wire: WireSpec): string[] {
  const places = [...book.parts, ...book.connectors];
  return holdersOf(wire).flatMap((holder) => places.find((place) => place.id === holder)?.zone ?? []);
}

/** The ground stud in the first of these zones that has one. */
function studIn(book: Book, zones: readonly string[]): string | undefined {
  const zoneOf = (part: string) => book.parts.find((p) => p.id === part)?.zone;
  const found = zones.flatMap((zone) => book.grounds.find((ground) => zoneOf(ground.part) === zone) ?? []);
  return found[0]?.part;
}

/** Pairs of wires in neighbouring cavities on one side of a plug, that are not the same circuit. */
function pairsOf({ book, wires }: Model): Map<string, Neighbour[]> {
  const pairs = new Map<string, Neighbour[]>();
  const known = new Set<string>();
  const near = (wire: WireSpec, plug: string): number =>
    wire.from.startsWith(`${plug}.`) ? BEHIND_PLUG : 1 - BEHIND_PLUG;
  for (const { id: plug, kind, pins } of book.connectors) {
    for (const side of kind === 'inline' ? (['a', 'b'] as const) : (['a'] as const)) {
      for (const [i, pin] of pins.slice(0, -1).entries()) {
        const [first, second] = [pin, pins[i + 1]].map((p) => wires.get(p[side]));
        // It is told at the wire whose insulation the book speaks of.
        const [one, other] = first !== undefined && canRub(first) ? [first, second] : [second, first];
        if (one === undefined || other === undefined || one.number === other.number) continue;
        const key = [one.id, other.id].sort().join(' ');
        if (known.has(key)) continue;
        known.add(key);
        const neighbour = { wire: other.id, at: near(one, plug), toAt: near(other, plug) };
        pairs.set(one.id, [...(pairs.get(one.id) ?? []), neighbour]);
      }
    }
  }
  return pairs;
}

/** A wire that lies beside none in any plug lies in its bundle all the same, beside the next that the book has there. */
function addBundled({ book }: Model, pairs: Map<string, Neighbour[]>): void {
  const paired = new Set([...pairs].flatMap(([wire, others]) => [wire, ...others.map((other) => other.wire)]));
  for (const harness of book.harnesses) {
    // Battery cables go each its own way.
    if (isAnywhere(book, harness)) continue;
    const bundle = book.wires.filter((w) => w.harness === harness.id);
    for (const [i, wire] of bundle.entries()) {
      const next = bundle.slice(i + 1).find((other) => other.number !== wire.number);
      if (paired.has(wire.id) || next === undefined) continue;
      pairs.set(wire.id, [{ wire: next.id, at: MIDDLE, toAt: MIDDLE }]);
    }
  }
}

/** Wires with battery volts while every control and relay is at rest. */
function fedWires(model: Model): Set<string> {
  const { elements, book } = model;
  const rest = restingState(model);
  const view = {
    ...{ volts: () => 0, amps: () => 0, ohms: () => 0 },
    region: (i: number) => rest.regions[i],
    control: (i: number) => rest.controls[i],
    quantity: (i: number) => rest.quantities[i],
  };
  const leads = elements.filter(({ law, when }) => {
    const closed = when === undefined || compileGuard(model, when)(view);
    return closed && (law.kind === 'resistance' || law.kind === 'contact') && law.ohms < FEED_OHMS;
  });
  const live = new Set(elements.flatMap((e) => (e.law.kind === 'battery' ? [e.a] : [])));
  for (let before = -1; before < live.size; ) {
    before = live.size;
    // The battery's negative post is the reference: whatever is grounded through little is no feed.
    for (const { a, b } of leads) {
      if (a === REFERENCE || b === REFERENCE) continue;
      if (live.has(a)) live.add(b);
      else if (live.has(b)) live.add(a);
    }
  }
  return new Set(book.wires.filter((w) => live.has(nodeOf(model, w.from))).map((w) => w.id));
}

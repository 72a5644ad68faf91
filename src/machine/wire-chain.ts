/**
 * What has happened to one wire along its length: breaks and bad spots in its copper, touches of metal or of another
 * wire. Sorted by their places they are a chain with new nodes in it. Those are eliminated here, star by star, so that
 * the frozen plan of the network needs none: what is left lies between the ends of the wires and what they touch.
 */
import type { Bridge } from '../circuit/index.ts';
import type { Change } from '../parts/index.ts';
import { type Model, nodeOf } from './model.ts';

type Chafe = Extract<Change, { kind: 'chafe' }>;
type Series = Extract<Change, { kind: 'series' }>;

/** A bad spot without a place of its own lies in the middle. */
const MIDDLE = 0.5;
/** Two places of a wire are never quite one, ohms. */
const LEAST_OHMS = 1e-9;

/** A spot along the wire, from its `from` end: resistance in the copper (null: parted), or a node that is touched. */
type Spot = { at: number; ohms: number | null } | { at: number; node: number };

export interface WireChains {
  /** Ohms that are left between the two ends, by the wire's element; null where nothing is. */
  cores: ReadonlyMap<number, number | null>;
  /** Paths from the ends to what is touched. */
  bridges: readonly Bridge[];
  /** Changes that are told herewith, and not to be applied once more. */
  told: ReadonlySet<Change>;
}

const NONE: WireChains = { cores: new Map(), bridges: [], told: new Set() };

/** The chains of all wires that touch something. A wire that is only broken is a plain resistance. */
export function wireChains(model: Model, changes: readonly Change[]): WireChains {
  const chafes = changes.filter((change): change is Chafe => change.kind === 'chafe');
  if (chafes.length === 0) return NONE;
  const told = new Set<Change>(chafes);
  const web = new Web(model.points.length);
  const spots = touchesOf(model, chafes, web);
  for (const change of changes) {
    const own = change.kind === 'series' ? spots.get(elementOf(model, change.element)) : undefined;
    if (own === undefined || change.kind !== 'series') continue;
    own.push(breakOf(change));
    told.add(change);
  }
  for (const [element, own] of spots) {
    const { a, b } = model.elements[element];
    lay(web, a, b, ohmsOf(model, element, changes, told), own.sort(byPlace));
  }
  web.reduce();
  const cores = new Map<number, number | null>();
  for (const element of spots.keys()) {
    const { a, b } = model.elements[element];
    const siemens = web.take(a, b);
    cores.set(element, siemens === 0 ? null : 1 / siemens);
  }
  return { cores, bridges: web.rest(), told };
}

const elementOf = (model: Model, id: string): number => model.elementIndex.get(id) ?? -1;

/** The wire's own element, by the number of the wire. */
function wireElement(model: Model, wire: string): number {
  const element = elementOf(model, `W:${wire}`);
  if (element < 0) throw new RangeError(`no such wire in the book: ${wire}`);
  return element;
}

/** A touch is a new node on its wire, and one on the other wire where it touches one. */
function touchesOf(model: Model, chafes: readonly Chafe[], web: Web): Map<number, Spot[]> {
  const spots = new Map<number, Spot[]>();
  const touch = (wire: string, at: number): number => {
    const element = wireElement(model, wire);
    const node = web.node();
    spots.set(element, [...(spots.get(element) ?? []), { at, node }]);
    return node;
  };
  for (const { wire, at, to, toAt, ohms } of chafes) {
    const here = touch(wire, at);
    const there = to.startsWith('W:') ? touch(to.slice(2), toAt ?? MIDDLE) : nodeOf(model, to);
    web.join(here, there, 1 / ohms);
  }
  return spots;
}

const breakOf = ({ at, ohms }: Series): Spot => ({ at: at ?? MIDDLE, ohms });

/** At one and the same place the copper is parted first, on the side of the wire's `from` end. */
function byPlace(one: Spot, other: Spot): number {
  if (one.at !== other.at) return one.at - other.at;
  return Number('node' in one) - Number('node' in other);
}

function ohmsOf(model: Model, element: number, changes: readonly Change[], told: Set<Change>): number {
  const { law, id } = model.elements[element];
  let ohms = law.kind === 'resistance' ? law.ohms : 0;
  for (const change of changes) {
    if (change.kind !== 'ohms' || change.element !== id) continue;
    ohms = change.ohms;
    told.add(change);
  }
  return ohms;
}

/** Lays a wire from end to end through its spots. */
function lay(web: Web, a: number, b: number, ohms: number, spots: readonly Spot[]): void {
  let [from, since, added] = [a, 0, 0];
  let whole = true;
  const reach = (to: number, at: number): void => {
    if (whole) web.join(from, to, 1 / Math.max(ohms * (at - since) + added, LEAST_OHMS));
    [from, since, added, whole] = [to, at, 0, true];
  };
  for (const spot of spots) {
    if ('node' in spot) reach(spot.node, spot.at);
    else if (spot.ohms === null) whole = false;
    else added += spot.ohms;
  }
  reach(b, 1);
}

interface Joint {
  a: number;
  b: number;
  siemens: number;
}

/** Conductances between nodes of the machine and new ones, which are numbered behind them. */
class Web {
  private readonly first: number;
  private count = 0;
  private joints = new Map<string, Joint>();

  constructor(machineNodes: number) {
    this.first = machineNodes;
  }

  node(): number {
    return this.first + this.count++;
  }

  join(one: number, other: number, siemens: number): void {
    if (one === other) return;
    const [a, b] = one < other ? [one, other] : [other, one];
    const key = `${a} ${b}`;
    const known = this.joints.get(key);
    if (known === undefined) this.joints.set(key, { a, b, siemens });
    else known.siemens += siemens;
  }

  /** Eliminates the new nodes: each star becomes the mesh that equals it. */
  reduce(): void {
    for (let node = this.first; node < this.first + this.count; node++) {
      const star = [...this.joints.values()].filter(({ a, b }) => a === node || b === node);
      const sum = star.reduce((total, { siemens }) => total + siemens, 0);
      for (const { a, b } of star) this.joints.delete(`${a} ${b}`);
      star.forEach((one, i) => {
        for (const other of star.slice(i + 1))
          this.join(far(one, node), far(other, node), (one.siemens * other.siemens) / sum);
      });
    }
  }

  /** Takes out what lies between two nodes; 0 where nothing does. Siemens. */
  take(one: number, other: number): number {
    const key = one < other ? `${one} ${other}` : `${other} ${one}`;
    const siemens = this.joints.get(key)?.siemens ?? 0;
    this.joints.delete(key);
    return siemens;
  }

  rest(): Bridge[] {
    return [...this.joints.values()];
  }
}

const far = ({ a, b }: Joint, node: number): number => (a === node ? b : a);

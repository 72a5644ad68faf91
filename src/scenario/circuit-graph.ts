/** What is joined to what through copper and closed contacts, for the checks on feeds, fuses and grounds. */
import type { ElementSpec, Guard, PartSpec } from '../parts/index.ts';
import type { Names } from './names.ts';

interface Edge {
  to: string;
  /** When the contact on this edge is closed; none for copper. */
  when?: Guard;
  fuse?: boolean;
  /** A controller's output stage. */
  driver?: boolean;
  /** Cross-section of a wire; parts and pins count as thick as they need to be. */
  mm2: number;
}

interface Reach {
  fuses: boolean;
  drivers: boolean;
  leastMm2?: number;
}

/** Up to here a resistance inside a part is a conductor: bus tabs, studs, doubled pins, thermal links. Ohms. */
const CONDUCTOR_OHMS = 0.05;

export type CircuitGraph = ReadonlyMap<string, readonly Edge[]>;

export function isLoad(part: PartSpec, element: ElementSpec): boolean {
  return element.load === true || (part.kind === 'relay' && element.id === 'coil');
}

export function buildCircuit(names: Names): CircuitGraph {
  const graph = new Map<string, Edge[]>();
  const join = (a: string, b: string, edge: Omit<Edge, 'to'>) => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ]) {
      const edges = graph.get(from) ?? [];
      edges.push({ ...edge, to });
      graph.set(from, edges);
    }
  };
  const { book } = names;
  for (const wire of book.wires) join(wire.from, wire.to, { mm2: wire.mm2 });
  for (const connector of book.connectors) {
    for (const pin of connector.pins) {
      const a = `${connector.id}.${pin.pin}`;
      join(`${a}.a`, connector.kind === 'inline' ? `${a}.b` : pin.b, { mm2: Number.POSITIVE_INFINITY });
    }
  }
  for (const [i, part] of book.parts.entries()) {
    for (const element of names.contents[i].elements) {
      const edge = edgeOf(part, element);
      if (edge !== null) join(element.a, element.b, edge);
    }
  }
  return graph;
}

function edgeOf(part: PartSpec, element: ElementSpec): Omit<Edge, 'to'> | null {
  const { law } = element;
  if (isLoad(part, element)) return null;
  if (law.kind === 'resistance') return law.ohms <= CONDUCTOR_OHMS ? { mm2: Number.POSITIVE_INFINITY } : null;
  if (law.kind !== 'contact' || law.openOhms !== undefined) return null;
  const edge = { fuse: part.kind === 'fuse', driver: part.kind === 'controller', mm2: Number.POSITIVE_INFINITY };
  return element.when === undefined ? edge : { ...edge, when: element.when };
}

/** What the contacts on a way ask of the machine: the values that each control or region may still have. */
type Asked = ReadonlyMap<string, readonly string[]>;

const NOTHING: Asked = new Map();

/** Adds a contact's condition; null when it can never be closed together with those before it. */
function alsoAsk(asked: Asked, when: Guard | undefined): Asked | null {
  if (when === undefined || !('is' in when)) return asked;
  const name = 'region' in when ? `region ${when.region}` : `control ${when.control}`;
  const before = asked.get(name);
  const left = before === undefined ? when.is : before.filter((value) => when.is.includes(value));
  if (left.length === 0) return null;
  return before !== undefined && left.length === before.length ? asked : new Map([...asked, [name, left]]);
}

/** Does `one` ask no more than `other`? Then a point reached by `one` needs no second visit by `other`. */
function asksLess(one: Asked, other: Asked): boolean {
  for (const [name, values] of one) {
    const narrower = other.get(name);
    if (narrower === undefined || !narrower.every((value) => values.includes(value))) return false;
  }
  return true;
}

/** All points that current can reach from the starts, by ways whose contacts can all be closed at one time. */
export function reachFrom(graph: CircuitGraph, starts: readonly string[], reach: Reach): Set<string> {
  const visits = new Map<string, Asked[]>(starts.map((point) => [point, [NOTHING]]));
  const queue: { point: string; asked: Asked }[] = starts.map((point) => ({ point, asked: NOTHING }));
  for (let head = 0; head < queue.length; head++) {
    const { point, asked } = queue[head];
    for (const edge of graph.get(point) ?? []) {
      if (edge.fuse === true && !reach.fuses) continue;
      if (edge.driver === true && !reach.drivers) continue;
      if (edge.mm2 < (reach.leastMm2 ?? 0)) continue;
      const next = alsoAsk(asked, edge.when);
      if (next === null) continue;
      const earlier = visits.get(edge.to) ?? [];
      if (earlier.some((visit) => asksLess(visit, next))) continue;
      visits.set(edge.to, [...earlier, next]);
      queue.push({ point: edge.to, asked: next });
    }
  }
  return new Set(visits.keys());
}

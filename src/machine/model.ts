/** A book compiled for the solver: points as node indices, elements as edges, regions with their tables. Frozen. */
import { makePlan, type Plan, REFERENCE } from '../circuit/index.ts';
import {
  contentOf,
  type ElementId,
  type ElementSpec,
  type Law,
  type PointId,
  type RegionSpec,
} from '../parts/index.ts';
import type { Book, WireSpec } from './book.ts';
import { watchedNodes } from './watched.ts';

export interface ModelElement {
  id: ElementId;
  a: number;
  b: number;
  law: Law;
  when?: ElementSpec['when'];
  /** What a repair or exchange of this element is called: `K2`, `W:206D`, `X:X3.3`. */
  owner: string;
}

export interface Model {
  book: Book;
  points: PointId[];
  pointIndex: ReadonlyMap<PointId, number>;
  elements: ModelElement[];
  elementIndex: ReadonlyMap<ElementId, number>;
  regions: RegionSpec[];
  regionIndex: ReadonlyMap<string, number>;
  /** Names of all quantities: the book's, `rpm`, and the charge drawn from each battery (`G1.usedAh`). */
  quantities: string[];
  quantityIndex: ReadonlyMap<string, number>;
  controlIndex: ReadonlyMap<string, number>;
  wires: ReadonlyMap<string, WireSpec>;
  plan: Plan;
}

/** Does a wire end at something that it can be taken off: a terminal or a stud, not a connector pin or a splice? */
export function hasLug(end: PointId): boolean {
  return !/^(X\d+\.|SP\d)/.test(end);
}

export const lugPoint = (wire: string, end: 'from' | 'to'): PointId => `${wire}@${end}`;

/** Copper resistivity of the book's wire table, ohm mm²/m (hot stranded wire; ISO 6722-1 maximum, from memory). */
const BOOK_RESISTIVITY = 0.0185;

/**
 * A wire is its copper plus what its two ends add. Where an end is a lug, half of the end resistance becomes an
 * element of its own, so that a bad lug and a bad wire are different faults.
 */
function wireElements(wire: WireSpec): { id: string; a: string; b: string; ohms: number; owner: string }[] {
  const copper = (BOOK_RESISTIVITY * wire.metres) / wire.mm2;
  const end = Math.max((wire.ohms - copper) / 2, wire.ohms * 0.01);
  const owner = `W:${wire.id}`;
  const ends = (['from', 'to'] as const).filter((side) => hasLug(wire[side]));
  const point = (side: 'from' | 'to') => (ends.includes(side) ? lugPoint(wire.id, side) : wire[side]);
  return [
    { id: owner, a: point('from'), b: point('to'), ohms: wire.ohms - end * ends.length, owner },
    ...ends.map((side) => ({
      id: `L:${lugPoint(wire.id, side)}`,
      a: side === 'from' ? wire.from : lugPoint(wire.id, side),
      b: side === 'from' ? lugPoint(wire.id, side) : wire.to,
      ohms: end,
      owner,
    })),
  ];
}

export function buildModel(book: Book): Model {
  const points: PointId[] = [];
  const pointIndex = new Map<PointId, number>();
  const node = (point: PointId): number => {
    if (point === book.reference) return REFERENCE;
    const known = pointIndex.get(point);
    if (known !== undefined) return known;
    pointIndex.set(point, points.length);
    points.push(point);
    return points.length - 1;
  };
  const elements: ModelElement[] = [];
  const regions: RegionSpec[] = [];
  for (const part of book.parts) {
    const content = contentOf(part);
    for (const e of content.elements) {
      const element: ModelElement = {
        id: `${part.id}.${e.id}`,
        a: node(e.a),
        b: node(e.b),
        law: e.law,
        owner: part.id,
      };
      if (e.when !== undefined) element.when = e.when;
      elements.push(element);
    }
    regions.push(...content.regions);
  }
  const resistor = (id: string, a: string, b: string, ohms: number, owner: string) =>
    elements.push({ id, a: node(a), b: node(b), law: { kind: 'resistance', ohms }, owner });
  for (const wire of book.wires) for (const e of wireElements(wire)) resistor(e.id, e.a, e.b, e.ohms, e.owner);
  for (const connector of book.connectors) {
    for (const pin of connector.pins) {
      const id = `${connector.id}.${pin.pin}`;
      resistor(`X:${id}`, `${id}.a`, connector.kind === 'inline' ? `${id}.b` : pin.b, pin.ohms, `X:${id}`);
    }
  }
  regions.push(...book.regions, engineRegion(book));
  for (const element of elements) if (element.law.kind === 'alternator') node(element.law.sense);

  const edges = elements.map((e): [number, number] => [e.a, e.b]);
  for (const element of elements) {
    // The excitation terminal touches the output while it charges: a second edge, beyond the elements'.
    if (element.law.kind === 'excitation') edges.push([element.a, outputNode(elements, element.law.of)]);
  }
  const quantities = [...book.quantities.map((q) => q.id)];
  if (!quantities.includes('rpm')) quantities.push('rpm');
  for (const e of elements) if (e.law.kind === 'battery') quantities.push(chargeQuantity(e.owner));
  const index = (names: string[]) => new Map(names.map((name, i) => [name, i]));
  const model: Omit<Model, 'plan'> = {
    book,
    points,
    pointIndex,
    elements,
    elementIndex: index(elements.map((e) => e.id)),
    regions,
    regionIndex: index(regions.map((r) => r.id)),
    quantities,
    quantityIndex: index(quantities),
    controlIndex: index(book.controls.map((c) => c.id)),
    wires: new Map(book.wires.map((w) => [w.id, w])),
  };
  return { ...model, plan: makePlan(points.length, edges, watchedNodes(model)) };
}

export const chargeQuantity = (part: string): string => `${part}.usedAh`;

function outputNode(elements: ModelElement[], id: ElementId): number {
  return elements.find((e) => e.id === id)?.a ?? REFERENCE;
}

/** The engine fires and stops by the book's rules; its speed is a quantity that the kernel integrates. */
function engineRegion(book: Book): RegionSpec {
  return {
    id: 'engine',
    states: ['stopped', 'running'],
    initial: 'stopped',
    transitions: [
      { from: 'stopped', to: 'running', when: book.engine.fires, afterMs: book.engine.firesAfterMs },
      { from: 'running', to: 'stopped', when: { not: book.engine.keepsRunning }, afterMs: 100 },
    ],
  };
}

/** Node of a point. A point that the book doesn't have is a fault of the caller. */
export function nodeOf(model: Model, point: PointId): number {
  if (point === model.book.reference) return REFERENCE;
  const node = model.pointIndex.get(point);
  if (node === undefined) throw new RangeError(`no such point in the book: ${point}`);
  return node;
}

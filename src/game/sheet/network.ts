/** The book as a graph to walk on: points joined by wires, connector pins and what is inside the parts. */
import type { Book, SpliceSpec, WireSpec } from '../../machine/index.ts';
import { contentOf, type ElementSpec, type PartSpec, type PointId } from '../../parts/index.ts';

interface EdgeBase {
  /** Id as in the model: `W:206A`, `X:X1.2`, `K1.coil`. */
  id: string;
  a: PointId;
  b: PointId;
}
export type Edge =
  | (EdgeBase & { kind: 'wire'; wire: WireSpec })
  | (EdgeBase & { kind: 'pin'; connector: string; pin: string; inline: boolean })
  | (EdgeBase & { kind: 'element'; part: PartSpec; element: ElementSpec });

export interface SheetNetwork {
  edges: ReadonlyMap<string, Edge>;
  at: ReadonlyMap<PointId, readonly Edge[]>;
  parts: ReadonlyMap<string, PartSpec>;
  splices: ReadonlyMap<string, SpliceSpec>;
  /** Part that a terminal belongs to. */
  partOf(point: PointId): PartSpec | undefined;
}

export function sheetNetwork(book: Pick<Book, 'parts' | 'connectors' | 'wires' | 'splices'>): SheetNetwork {
  const edges = new Map<string, Edge>();
  const at = new Map<PointId, Edge[]>();
  const add = (edge: Edge): void => {
    edges.set(edge.id, edge);
    for (const point of [edge.a, edge.b]) {
      const list = at.get(point);
      if (list === undefined) at.set(point, [edge]);
      else list.push(edge);
    }
  };
  for (const wire of book.wires) add({ id: `W:${wire.id}`, a: wire.from, b: wire.to, kind: 'wire', wire });
  for (const { id, kind, pins } of book.connectors) {
    for (const { pin, b } of pins) {
      const inline = kind === 'inline';
      const name = `${id}.${pin}`;
      add({ id: `X:${name}`, a: `${name}.a`, b: inline ? `${name}.b` : b, kind: 'pin', connector: id, pin, inline });
    }
  }
  for (const part of book.parts) {
    for (const element of contentOf(part).elements) {
      add({ id: `${part.id}.${element.id}`, a: element.a, b: element.b, kind: 'element', part, element });
    }
  }
  const parts = new Map(book.parts.map((part) => [part.id, part]));
  const splices = new Map(book.splices.map((splice) => [splice.id, splice]));
  return { edges, at, parts, splices, partOf: (point) => parts.get(point.slice(0, point.indexOf('.'))) };
}

/** The name of a terminal on its part: `K1.87a` is `87a`. */
export const terminalOf = (point: PointId): string => point.slice(point.indexOf('.') + 1);

/** Can a probe reach this point, or is it inside a part? */
export function probeable(network: SheetNetwork, point: PointId): boolean {
  return !network.partOf(point)?.hidden?.includes(terminalOf(point));
}

/** What a controller calls this terminal: `CRQ`. */
export function pinName(network: SheetNetwork, point: PointId): string | undefined {
  const part = network.partOf(point);
  if (part?.kind !== 'controller') return undefined;
  return part.pins?.find((pin) => pin.terminal === terminalOf(point))?.name;
}

/** Has a device's wiring a plug, or do its wires end at terminals of its own? */
export function hasPlug(network: SheetNetwork, part: PartSpec): boolean {
  for (const edge of network.edges.values()) {
    if (edge.kind === 'pin' && !edge.inline && network.partOf(edge.b) === part) return true;
  }
  return false;
}

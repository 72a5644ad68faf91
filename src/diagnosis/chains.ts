/**
 * Elements in one row without a branch carry the same current: resistance added to any of them changes the rest of the
 * machine alike. What was tried with one holds for all.
 */
import { REFERENCE } from '../circuit/index.ts';
import { conditionsOf, type Model } from '../machine/index.ts';
import type { Law } from '../parts/index.ts';
import type { SuspectFamily } from './suspects.ts';

const PASSIVE: readonly Law['kind'][] = ['resistance', 'contact', 'variable'];

export class Chains {
  private readonly model: Model;
  /** By element: one of its row. */
  private readonly rows: Int32Array;

  constructor(model: Model) {
    this.model = model;
    this.rows = rowsOf(model);
  }

  /** Two faults with the same name change everything alike but the volts inside of their row. */
  nameOf(family: SuspectFamily, ohms: number): string {
    const changes = family.faults(ohms).flatMap((fault) => fault.changes);
    const [change] = changes;
    if (changes.length !== 1 || change.kind !== 'series' || family.controls !== undefined)
      return `${family.id} ${ohms}`;
    return `row ${this.rows[this.model.elementIndex.get(change.element) ?? 0]} ${change.ohms}`;
  }
}

function rowsOf(model: Model): Int32Array {
  const rows = Int32Array.from(model.elements, (_, e) => e);
  const rowOf = (e: number): number => {
    let at = e;
    while (rows[at] !== at) at = rows[at];
    return at;
  };
  const named = namedNodes(model);
  const { edgeA, edgeB } = model.plan;
  const touching: number[][] = model.points.map(() => []);
  for (let e = 0; e < model.plan.edgeCount; e++) {
    for (const node of [edgeA[e], edgeB[e]]) if (node !== REFERENCE) touching[node].push(e);
  }
  const isPassive = (e: number) => model.elements[e] !== undefined && PASSIVE.includes(model.elements[e].law.kind);
  touching.forEach((edges, node) => {
    if (edges.length === 2 && !named.has(node) && edges.every(isPassive)) rows[rowOf(edges[0])] = rowOf(edges[1]);
  });
  return rows.map((_, e) => rowOf(e));
}

/** Nodes whose volts or resistance some table asks for. */
function namedNodes(model: Model): Set<number> {
  const points = conditionsOf(model).flatMap((condition): string[] => {
    if ('volts' in condition) return condition.volts;
    return 'ohms' in condition ? condition.ohms : [];
  });
  const senses = model.elements.flatMap(({ law }) => (law.kind === 'alternator' ? [law.sense] : []));
  return new Set([...points, ...senses].map((point) => model.pointIndex.get(point) ?? REFERENCE));
}

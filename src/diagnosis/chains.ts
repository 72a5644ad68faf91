/**
 * Elements in one row without a branch carry the same current: resistance added to any of them changes the rest of the
 * machine alike. What was tried with one holds for all. So it is with a touch anywhere along one run of wire, whose few
 * milliohms are nothing beside the touch; and a leak of hundreds of ohms may sit anywhere on the whole circuit number.
 */
import { REFERENCE } from '../circuit/index.ts';
import { conditionsOf, type Model } from '../machine/index.ts';
import type { Change, Law } from '../parts/index.ts';
import type { SuspectFamily } from './suspects.ts';

const PASSIVE: readonly Law['kind'][] = ['resistance', 'contact', 'variable'];

export class Chains {
  private readonly model: Model;
  /** By element: one of its row; of its run of wires and pins without a branch; of all wires and pins joined to it. */
  private readonly rows: Int32Array;
  private readonly runs: Int32Array;
  private readonly nets: Int32Array;

  constructor(model: Model) {
    this.model = model;
    this.rows = joined(model, (e) => PASSIVE.includes(model.elements[e].law.kind), isUnbranched(model));
    this.runs = joined(model, (e) => isCopper(model, e), isUnbranched(model));
    this.nets = joined(
      model,
      (e) => isCopper(model, e),
      () => true,
    );
  }

  /** Two faults with the same name change everything alike but the volts inside of their row. */
  nameOf(family: SuspectFamily, ohms: number): string {
    const [change, ...more] = family.faults(ohms).flatMap((fault) => fault.changes);
    if (change !== undefined && more.length === 0 && family.controls === undefined) {
      if (change.kind === 'series') return `row ${this.placeOf(this.rows, change.element)} ${change.ohms}`;
      if (change.kind === 'chafe') return this.touchOf(change);
    }
    return `${family.id} ${ohms}`;
  }

  private placeOf(places: Int32Array, element: string): number {
    return places[this.model.elementIndex.get(element) ?? 0];
  }

  private touchOf({ wire, to, ohms }: Extract<Change, { kind: 'chafe' }>): string {
    const own = `W:${wire}`;
    if (!to.startsWith('W:')) {
      // Which metal it is makes no difference to a leak.
      return ohms >= LEAK_OHMS
        ? `leak ${this.placeOf(this.nets, own)} ${ohms}`
        : `touch ${this.placeOf(this.runs, own)} ${to} ${ohms}`;
    }
    const ends = [own, to].map((element) => this.placeOf(this.runs, element)).sort((a, b) => a - b);
    return `touch ${ends.join(' ')} ${ohms}`;
  }
}

/** From here on the ohms of a harness, and between metals, are less than a thousandth. */
const LEAK_OHMS = 500;

const isCopper = (model: Model, e: number): boolean => /^[WX]:/.test(model.elements[e].owner);

/** Does nothing else join here, and does no table ask for the volts? */
function isUnbranched(model: Model): (node: number, edges: readonly number[]) => boolean {
  const named = namedNodes(model);
  return (node, edges) => edges.length === 2 && !named.has(node);
}

/** Elements of a sort joined where `at` allows it: by element, one that stands for all that are joined to it. */
function joined(
  model: Model,
  isOfSort: (element: number) => boolean,
  at: (node: number, edges: readonly number[]) => boolean,
): Int32Array {
  const rows = Int32Array.from(model.elements, (_, e) => e);
  const rowOf = (e: number): number => {
    let place = e;
    while (rows[place] !== place) place = rows[place];
    return place;
  };
  const { edgeA, edgeB } = model.plan;
  const touching: number[][] = model.points.map(() => []);
  for (let e = 0; e < model.plan.edgeCount; e++) {
    for (const node of [edgeA[e], edgeB[e]]) if (node !== REFERENCE) touching[node].push(e);
  }
  touching.forEach((edges, node) => {
    if (!at(node, edges)) return;
    const own = edges.filter((e) => model.elements[e] !== undefined && isOfSort(e));
    // One edge of another sort ends an unbranched row.
    if (own.length < Math.min(2, edges.length)) return;
    for (const e of own.slice(1)) rows[rowOf(own[0])] = rowOf(e);
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

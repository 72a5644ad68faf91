/** Columns of a sheet: the paths found in the book, and the column in which each point stands. */
import type { Book } from '../../machine/index.ts';
import type { PointId } from '../../parts/index.ts';
import type { SheetSpec } from '../../scenario/schema-sheet.ts';
import { type SheetNetwork, sheetNetwork } from './network.ts';
import { type Step, walk } from './walk.ts';
import { ENGLISH, type SheetWords } from './words.ts';

export interface SheetColumn {
  /** Number printed in the strip. */
  track: number;
  x: number;
  left: number;
  right: number;
}

export interface ColumnPath {
  track: number;
  x: number;
  steps: Step[];
  /** Column in which the last wire climbs to the path's end. */
  climbX?: number;
}

/** What of a book a sheet is made from. */
export type SheetBook = Pick<Book, 'name' | 'parts' | 'connectors' | 'wires' | 'splices'>;

export interface SheetPlan {
  machine: string;
  words: SheetWords;
  network: SheetNetwork;
  sheet: SheetSpec;
  columns: SheetColumn[];
  paths: ColumnPath[];
  rails: ReadonlySet<PointId>;
  elsewhere: ReadonlySet<PointId>;
  /** Column of every point that isn't a rail. */
  pointX: Map<PointId, number>;
  /** Track of every point, rails by their first user. */
  pointTrack: Map<PointId, number>;
}

/** Left edge of the first column, units: room for the rails' names. */
const FIRST = 62;

export function planSheet(book: SheetBook, sheet: SheetSpec, words: SheetWords = ENGLISH): SheetPlan {
  const network = sheetNetwork(book);
  const rails = new Set(sheet.rails.map((rail) => rail.point));
  const columns: SheetColumn[] = [];
  let left = FIRST;
  sheet.tracks.forEach((track, i) => {
    const width = track.width ?? sheet.pitch;
    columns.push({ track: i + 1, x: left + sheet.pitch / 2, left, right: left + width });
    left += width;
  });
  const paths = sheet.tracks.flatMap((track, i) =>
    track.paths.map((path): ColumnPath => {
      const steps = walk(network, [path.from, ...path.via, path.to], rails);
      const found = { track: i + 1, x: columns[i].x + path.dx, steps };
      return path.climb === undefined ? found : { ...found, climbX: columns[path.climb - 1].x };
    }),
  );
  const plan: SheetPlan = {
    machine: book.name,
    words,
    network,
    sheet,
    columns,
    paths,
    rails,
    elsewhere: new Set(sheet.elsewhere),
    pointX: new Map(),
    pointTrack: new Map(),
  };
  giveColumns(plan);
  return plan;
}

/** A point stands where a path passes it; else where a wire climbs to it; else where the first path meets it. */
function giveColumns(plan: SheetPlan): void {
  const claims: [PointId, number, number, number][] = [];
  for (const { x, climbX, steps, track } of plan.paths) {
    const last = steps.length - 1;
    steps.forEach((step, i) => {
      claims.push([step.from, i > 0 ? 3 : 1, x, track]);
      if (i < last) return;
      const up = plan.columns.find((c) => c.x === climbX);
      claims.push([step.to, up ? 2 : 1, up?.x ?? x, up?.track ?? track]);
    });
  }
  const best = new Map<PointId, number>();
  for (const [point, rank, x, track] of claims) {
    if ((best.get(point) ?? 0) >= rank) continue;
    best.set(point, rank);
    plan.pointTrack.set(point, track);
    if (!plan.rails.has(point)) plan.pointX.set(point, x);
  }
}

/** Everything of the book that the sheet's paths, ties and links draw, by the model's ids. */
export function drawnEdges(plan: SheetPlan): Set<string> {
  const ids = new Set(plan.paths.flatMap((path) => path.steps.map((step) => step.edge.id)));
  for (const tie of plan.sheet.ties) ids.add(`W:${tie}`);
  for (const link of plan.sheet.links) ids.add(linkEdge(plan, link));
  return ids;
}

/** The element of the book that joins two points inside a device. */
export function linkEdge(plan: SheetPlan, [a, b]: readonly [PointId, PointId]): string {
  const edge = plan.network.at.get(a)?.find((e) => e.kind === 'element' && (e.a === b || e.b === b));
  if (edge === undefined) throw new RangeError(`nothing in the book joins ${a} and ${b} inside a device`);
  return edge.id;
}

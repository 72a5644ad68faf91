/** Random actions over every kind of action and every id of the book, likely ones more often, so that much is not refused. */
import fc from 'fast-check';
import type { Action, ActionKind } from '../../src/job/index.ts';
import type { Model } from '../../src/machine/index.ts';

const METER = ['off', 'volts-dc', 'ohms', 'continuity', 'diode', 'amps', 'volts-lo'] as const;
const ENDINGS = ['repaired', 'no-fault', 'cannot-duplicate', 'not-safe', 'handed-on'] as const;

/** One arbitrary for each kind; a kind that is missing here does not compile. */
function byKind(model: Model): { [K in ActionKind]: fc.Arbitrary<Extract<Action, { do: K }>> } {
  const { book } = model;
  const of = <T>(values: readonly T[]) => fc.constantFrom(...values);
  const parts = book.parts.map((p) => p.id);
  const sockets = book.parts.filter((p) => p.kind === 'fuse' || p.kind === 'relay').map((p) => p.id);
  const connectors = book.connectors.map((c) => c.id);
  const wires = book.wires.map((w) => `W:${w.id}`);
  const pins = book.connectors.flatMap((c) => c.pins.map((p) => `X:${c.id}.${p.pin}`));
  const ends = book.wires.flatMap((w) => [`${w.id}@from`, `${w.id}@to`]);
  const targets = of([...parts, ...wires, ...pins]);
  const points = of([book.reference, ...model.points]);
  const zones = of(book.zones.map((z) => z.id));
  const covers = of(book.access.map((a) => a.id));
  const moves = of(book.controls.flatMap((c) => c.values.map((value) => ({ control: c.id, value }))));
  const just = <K extends ActionKind>(kind: K) => ({ do: fc.constant(kind) });
  return {
    start: fc.record(just('start')),
    ask: fc.record({ ...just('ask'), question: of(['when', 'before', 'tried', 'other']) }),
    walk: fc.record({ ...just('walk'), zone: zones }),
    open: fc.record({ ...just('open'), access: covers }),
    close: fc.record({ ...just('close'), access: covers }),
    precaution: fc.record({ ...just('precaution'), id: of(book.precautions.map((p) => p.id)), on: fc.boolean() }),
    helper: fc.record({ ...just('helper'), call: fc.boolean() }),
    operate: fc
      .tuple(moves, fc.option(fc.integer({ min: 500, max: 6000 }), { nil: null }))
      .map(([move, holdMs]) => ({ do: 'operate' as const, ...move, ...(holdMs === null ? {} : { holdMs }) })),
    instrument: fc.record({ ...just('instrument'), take: of(['meter', 'lamp'] as const) }),
    dial: fc.record({ ...just('dial'), fn: of(METER) }),
    jack: fc.record({ ...just('jack'), red: of(['volts', 'amps'] as const) }),
    range: fc.record({ ...just('range'), to: of([null, 0, 1, 2, 5]) }),
    zero: fc.record({ ...just('zero'), on: fc.boolean() }),
    minmax: fc.record({ ...just('minmax'), on: fc.boolean() }),
    renewFuse: fc.record(just('renewFuse')),
    lead: fc.record({
      ...just('lead'),
      lead: of(['red', 'black'] as const),
      point: fc.option(points, { nil: null, freq: 20 }),
    }),
    read: fc.record(just('read')),
    look: fc.record({ ...just('look'), at: fc.oneof(targets, zones, of(ends)) }),
    wiggle: fc.record({ ...just('wiggle'), at: fc.oneof(targets, zones) }),
    codes: fc.record(just('codes')),
    clearCodes: fc.record(just('clearCodes')),
    unplug: fc.record({ ...just('unplug'), connector: of(connectors) }),
    plug: fc.record({ ...just('plug'), connector: of(connectors) }),
    lift: fc.record({ ...just('lift'), end: of(ends) }),
    land: fc.record({ ...just('land'), end: of(ends) }),
    pull: fc.record({ ...just('pull'), part: of(sockets) }),
    refit: fc.record({ ...just('refit'), part: of(sockets) }),
    exchange: fc.record({ ...just('exchange'), part: of(sockets), with: of(sockets) }),
    repair: fc.record({ ...just('repair'), verb: of(book.repairs.map((r) => r.id)), target: targets }),
    mark: fc.record({ ...just('mark'), target: targets, suspect: fc.boolean() }),
    note: fc.record({ ...just('note'), text: fc.string({ maxLength: 20 }) }),
    verify: fc.record(just('verify')),
    writeUp: fc.record({
      ...just('writeUp'),
      complaint: fc.string({ maxLength: 10 }),
      cause: targets,
      mode: of(['open', 'corroded', 'operator']),
      correction: fc.string({ maxLength: 10 }),
    }),
    finish: fc.record({ ...just('finish'), ending: of(ENDINGS) }),
  };
}

/** Kinds by how often they come; an end comes seldom, or nothing would be left to try. */
const OFTEN: Partial<Record<ActionKind, number>> = {
  walk: 12,
  open: 12,
  lead: 30,
  operate: 14,
  read: 10,
  dial: 8,
  jack: 3,
  helper: 4,
  pull: 6,
  unplug: 6,
  lift: 6,
  repair: 6,
  exchange: 4,
  finish: 1,
};

function anyActions(model: Model, length: number): fc.Arbitrary<Action[]> {
  const kinds = byKind(model);
  const action = fc.oneof(
    ...Object.entries(kinds).map(([kind, arbitrary]) => ({
      weight: OFTEN[kind as ActionKind] ?? 2,
      arbitrary: arbitrary as fc.Arbitrary<Action>,
    })),
  );
  return fc.array(action, { minLength: length, maxLength: length });
}

/** Fixed, so that every run tries the same; another number tries others. */
export const CHOICE = 45;

/** A job and actions for it; with the same fixed number, the same ones in the same order wherever it is tried. */
export const anyAttempts = (
  jobs: readonly string[],
  model: Model,
  length: number,
  holds: (job: string, actions: Action[]) => void,
) => fc.property(fc.constantFrom(...jobs), anyActions(model, length), holds);

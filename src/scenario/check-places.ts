/** Places, access steps, controls, precautions, costs, limits: names used there, and tables that must be complete. */
import type { ControlSpec, PrecautionSpec } from '../machine/book.ts';
import type { PartSpec } from '../parts/index.ts';
import { Finder, type Names } from './names.ts';
import type { Problem } from './problem.ts';

export function checkPlaces(names: Names): Problem[] {
  const finder = new Finder(names.origins);
  const { book } = names;
  const { zones, access, parts } = names;
  const id = (x: { id: string }) => x.id;
  finder.unique(book.zones, id, 'id', 'zone');
  finder.unique(book.harnesses, id, 'id', 'harness');
  finder.unique(book.access, id, 'id', 'access step');
  finder.unique(book.controls, id, 'id', 'control');
  finder.unique(book.quantities, id, 'id', 'quantity');
  finder.unique(book.precautions, id, 'id', 'precaution');
  finder.unique(book.checks, id, 'id', 'check');
  finder.unique(book.observables, (o: { code: string }) => o.code, 'code', 'observable');
  finder.unique(book.interlocks, id, 'id', 'interlock');
  finder.unique(book.staircases, id, 'id', 'staircase');
  finder.unique(book.repairs, id, 'id', 'repair');
  finder.unique(book.tools, id, 'id', 'tool');
  finder.unique(book.manual, id, 'id', 'section');
  for (const zone of book.zones) finder.known(zone, 'access', zone.access, access, 'access');
  for (const harness of book.harnesses) finder.eachKnown(harness, 'zones', harness.zones, zones, 'zone');
  for (const [i, zone] of book.cab.entries()) {
    if (!zones.has(zone)) finder.reportKey('cab', `[${i}]`, 'unknown-zone', zone, 'a zone of this book');
  }
  if (!names.points.has(book.reference)) {
    finder.reportKey('reference', '', 'unknown-point', book.reference, 'a point of this book');
  }
  finder.known(book.seat, 'control', book.seat.control, names.controls, 'control');
  finder.known(book.seat, 'tiltedBy', book.seat.tiltedBy, access, 'access');
  for (const value of ['occupied', 'empty'] as const)
    oneOf(finder, book.seat, value, book.seat[value], names, book.seat.control);
  if (parts.get(book.engine.starter)?.kind !== 'starter') {
    finder.report(book.engine, 'starter', 'unknown-part', book.engine.starter, 'a part of kind starter');
  }
  for (const control of book.controls) checkControl(names, finder, control);
  checkPrecautions(names, finder);
  checkObservables(names, finder);
  checkWalk(names, finder);
  checkLimits(names, finder);
  checkReach(names, finder);
  return finder.problems;
}

function oneOf(finder: Finder, record: object, where: string, value: string, names: Names, control: string): void {
  const values = names.controls.get(control);
  if (values === undefined || values.includes(value)) return;
  finder.report(record, where, 'unknown-value', value, `one of ${values.join(', ')}`);
}

function checkControl(names: Names, finder: Finder, control: ControlSpec): void {
  finder.known(control, 'part', control.part, names.parts, 'part');
  finder.known(control, 'zone', control.zone, names.zones, 'zone');
  oneOf(finder, control, 'initial', control.initial, names, control.id);
  if (control.disconnects !== undefined) oneOf(finder, control, 'disconnects', control.disconnects, names, control.id);
  for (const value of control.values) {
    if (!Object.hasOwn(control.labels, value)) {
      finder.report(control, 'labels', 'missing', 'nothing', `what the value ${value} is called`);
    }
  }
  for (const [from, to] of Object.entries(control.springs ?? {})) {
    oneOf(finder, control, `springs.${from}`, from, names, control.id);
    oneOf(finder, control, `springs.${from}`, to, names, control.id);
  }
}

function checkPrecautions(names: Names, finder: Finder): void {
  const { book, precautions } = names;
  for (const step of book.access) {
    finder.eachKnown(step, 'toOpen', step.toOpen, precautions, 'precaution');
    finder.eachKnown(step, 'toWork', step.toWork, precautions, 'precaution');
  }
  for (const precaution of book.precautions) {
    const { pulled, lifted } = precaution;
    if (pulled !== undefined) finder.known(precaution, 'pulled', pulled, names.parts, 'part');
    if (lifted !== undefined) finder.known(precaution, 'lifted', lifted, names.points, 'point');
    const ways = [precaution.needs, pulled, lifted].filter((way) => way !== null && way !== undefined);
    if (ways.length > 1) {
      finder.report(precaution, 'needs', 'two-ways', `${ways.length} ways`, 'one of needs, pulled and lifted');
    }
    checkWhile(names, finder, precaution, ways.length > 0);
  }
  for (const check of book.checks) {
    finder.eachKnown(check, 'access', check.access ?? [], names.access, 'access');
    finder.eachKnown(check, 'zones', check.zones ?? [], names.zones, 'zone');
    finder.eachKnown(check, 'at', check.at ?? [], workedOn(names), 'target');
    for (const [i, any] of check.needs.entries())
      finder.eachKnown(check, `needs[${i}]`, any, precautions, 'precaution');
  }
}

/** What can be worked on, as actions name it. */
const workedOn = ({ book, points }: Names): ReadonlySet<string> =>
  new Set([
    ...book.parts.map((p) => p.id),
    ...book.connectors.map((c) => c.id),
    ...book.wires.map((w) => `W:${w.id}`),
    ...[...points].filter((point) => point.includes('@')),
  ]);

/** What holds a precaution set by hand must come from the machine itself, or two ticks could hold each other. */
function checkWhile(names: Names, finder: Finder, precaution: PrecautionSpec, byState: boolean): void {
  const { while: held, needsHelper } = precaution;
  if (byState && (held !== undefined || needsHelper !== undefined)) {
    finder.report(precaution, 'while', 'two-ways', 'the machine says whether it stands', 'a precaution set by hand');
  }
  for (const [i, id] of (held ?? []).entries()) {
    if (!finder.known(precaution, `while[${i}]`, id, names.precautions, 'precaution')) continue;
    const state = names.book.precautions.some((p) => p.id === id && p.needs !== null);
    if (!state) finder.report(precaution, `while[${i}]`, 'not-allowed', id, 'a precaution that the machine shows');
  }
}

function checkObservables(names: Names, finder: Finder): void {
  const { book } = names;
  const codes = new Set(book.observables.map((o) => o.code));
  for (const o of book.observables) finder.eachKnown(o, 'zones', o.zones, names.zones, 'zone');
  for (const stairs of book.staircases) {
    finder.known(stairs, 'black', stairs.black, names.points, 'point');
    finder.eachKnown(stairs, 'points', stairs.points, names.points, 'point');
    checkControls(names, finder, stairs);
  }
  for (const lock of book.interlocks) {
    finder.eachKnown(lock, 'seen', lock.seen, codes, 'observable');
    finder.eachKnown(lock, 'missing', lock.missing, codes, 'observable');
    checkControls(names, finder, lock);
  }
}

function checkControls(names: Names, finder: Finder, of: { controls: [control: string, value: string][] }): void {
  for (const [i, [control, value]] of of.controls.entries()) {
    if (!finder.known(of, `controls[${i}][0]`, control, names.controls, 'control')) continue;
    oneOf(finder, of, `controls[${i}][1]`, value, names, control);
  }
}

/** Minutes from every place to every other, told once a pair. */
function checkWalk(names: Names, finder: Finder): void {
  const { zones, costs } = names.book;
  for (const [from, row] of Object.entries(costs.walk)) {
    if (!names.zones.has(from)) finder.report(costs, `walk.${from}`, 'unknown-zone', from, 'a zone of this book');
    for (const to of Object.keys(row)) {
      if (!names.zones.has(to)) finder.report(costs, `walk.${from}.${to}`, 'unknown-zone', to, 'a zone of this book');
    }
  }
  for (const [i, one] of zones.entries()) {
    for (const other of zones.slice(i + 1)) {
      const minutes = costs.walk[one.id]?.[other.id] ?? costs.walk[other.id]?.[one.id];
      if (minutes !== undefined) continue;
      finder.report(
        costs,
        `walk.${one.id}`,
        'walk-incomplete',
        `no minutes to ${other.id}`,
        'minutes to every other zone',
      );
    }
  }
}

function checkLimits(names: Names, finder: Finder): void {
  for (const limit of names.book.limits) {
    if (limit.part !== undefined) finder.known(limit, 'part', limit.part, names.parts, 'part');
    for (const end of ['from', 'to'] as const) {
      const point = limit[end];
      if (point !== undefined) finder.known(limit, end, point, names.points, 'point');
    }
    if ((limit.from === undefined) !== (limit.to === undefined)) {
      finder.report(limit, limit.from === undefined ? 'from' : 'to', 'missing', 'nothing', 'both ends or neither');
    }
    for (const [min, max] of [
      [limit.minVolts, limit.maxVolts],
      [limit.minOhms, limit.maxOhms],
    ]) {
      if (min === undefined || max === undefined || min < max) continue;
      finder.report(limit, '', 'empty-range', `${min} to ${max}`, 'the least below the most');
    }
  }
}

/** Parts that are wired once and for all: a wire between two of them in two places could not be taken off. */
const FIXED = ['busbar', 'battery', 'radio', 'telematics', 'meter', 'socket', 'diagnostic-connector'];

const isFixed = (part: PartSpec): boolean =>
  part.kind === 'controller' || (part.kind === 'general' && FIXED.includes(part.symbol));

/** Can the harness come to where its wires end, and can a wire from one place to another be taken off at an end? */
function checkReach(names: Names, finder: Finder): void {
  const harnesses = new Map(names.book.harnesses.map((h) => [h.id, h.zones]));
  for (const wire of names.book.wires) {
    const reach = harnesses.get(wire.harness);
    const ends = (['from', 'to'] as const).map((end) => {
      const part = names.terminals.get(wire[end]);
      const at = part ?? names.connectors.get(wire[end].split('.')[0]);
      if (at !== undefined && reach !== undefined && !reach.includes(at.zone)) {
        const expected = `an end in ${reach.join(', ')}, where harness ${wire.harness} runs`;
        finder.report(wire, end, 'out-of-reach', `${wire[end]} in ${at.zone}`, expected);
      }
      return { zone: at?.zone, fixed: part !== undefined && isFixed(part) };
    });
    const [one, other] = ends;
    if (one.zone === undefined || other.zone === undefined || one.zone === other.zone) continue;
    if (one.fixed && other.fixed) {
      finder.report(wire, 'to', 'not-separable', `${one.zone} to ${other.zone}`, 'a connector between the two places');
    }
  }
}

/** Is every wire protected by a fuse that it can carry, and has every load a feed and a way to ground? */
import type { WireSpec } from '../machine/book.ts';
import type { ElementSpec, Guard, Law } from '../parts/index.ts';
import { buildCircuit, type CircuitGraph, isLoad, reachFrom } from './circuit-graph.ts';
import { Finder, type Names } from './names.ts';
import type { Problem } from './problem.ts';

/** Battery cables of this section and more run unfused, as the starter's current asks (common practice). mm². */
const MAIN_CABLE_MM2 = 35;
/** A sleeved lead from a stud to its own fuse holder may be unfused up to this length (common practice). Metres. */
const SHORT_LEAD_METRES = 0.3;
/** Least section between battery and starter, mm² (book, section 4). */
const STARTER_CABLE_MM2 = 50;
/** Copper when hot, ohm mm²/m, and what two ends may add at most, ohms (book, wire table). */
const COPPER = 0.0185;
const ENDS_OHMS = 0.004;

const CUT = { fuses: false, drivers: false };
const WHOLE = { fuses: true, drivers: true };

/** Where current comes from and goes back to. */
interface Sources {
  plus: string[];
  minus: string[];
  /** Terminals that feed at one time and ground at another: an alternator's excitation. */
  either: string[];
}

const elementsWith = (names: Names, kind: Law['kind']): ElementSpec[] =>
  names.contents.flatMap((c) => c.elements.filter((e) => e.law.kind === kind));

export function checkCircuit(names: Names): Problem[] {
  const finder = new Finder(names.origins);
  const graph = buildCircuit(names);
  const batteries = elementsWith(names, 'battery');
  const sources: Sources = {
    plus: batteries.map((e) => e.a),
    minus: batteries.map((e) => e.b),
    either: elementsWith(names, 'excitation').map((e) => e.a),
  };
  if (batteries.length === 0)
    finder.reportKey('parts', '', 'no-battery', 'no element with the law battery', 'one or more');
  if (feedMeetsGround(finder, graph, sources)) return finder.problems;
  checkProtection(names, finder, graph, sources);
  checkLoads(names, finder, graph, sources);
  checkStarter(names, finder, graph, sources);
  for (const wire of names.book.wires) checkCopper(finder, wire);
  return finder.problems;
}

/** Without a load somewhere between them, everything would be both: the other checks would have nothing to say. */
function feedMeetsGround(finder: Finder, graph: CircuitGraph, sources: Sources): boolean {
  const fed = reachFrom(graph, sources.plus, WHOLE);
  const meeting = sources.minus.filter((minus) => fed.has(minus));
  for (const minus of meeting) {
    finder.reportKey('parts', '', 'feed-meets-ground', minus, 'a load on every way from plus to minus');
  }
  return meeting.length > 0;
}

function checkProtection(names: Names, finder: Finder, graph: CircuitGraph, sources: Sources): void {
  const unfused = reachFrom(graph, sources.plus, CUT);
  const ratings = new Map<string, number>();
  for (const part of names.book.parts) if (part.kind === 'fuse') ratings.set(`${part.id}.b`, part.ratingAmps);
  const reached = new Map<string, Set<string>>();
  for (const wire of names.book.wires) {
    if (unfused.has(wire.from)) {
      if (wire.mm2 >= MAIN_CABLE_MM2 || wire.metres <= SHORT_LEAD_METRES) continue;
      finder.report(
        wire,
        'from',
        'unfused-wire',
        `${wire.id} from ${wire.from}`,
        'a fuse between the battery and the wire',
      );
      continue;
    }
    // A ground wire has no fuse's outlet around it.
    const around = reached.get(wire.from) ?? reachFrom(graph, [wire.from], CUT);
    reached.set(wire.from, around);
    checkFuses(finder, wire, around, ratings);
    checkDriver(names, finder, wire, around);
  }
}

function checkFuses(
  finder: Finder,
  wire: WireSpec,
  around: ReadonlySet<string>,
  ratings: ReadonlyMap<string, number>,
): void {
  for (const [out, amps] of ratings) {
    if (!around.has(out) || amps <= wire.ampacityAmps) continue;
    const found = `${out.slice(0, out.lastIndexOf('.'))} of ${amps} A`;
    finder.report(wire, 'ampacityAmps', 'fuse-above-wire', found, `a fuse of at most ${wire.ampacityAmps} A`);
  }
}

/** A wire behind a controller's output is protected by the output's own limit, where its regions name one. */
function checkDriver(names: Names, finder: Finder, wire: WireSpec, around: ReadonlySet<string>): void {
  for (const part of names.book.parts) {
    if (part.kind !== 'controller') continue;
    for (const element of part.elements) {
      if (element.law.kind !== 'contact' || !around.has(element.b)) continue;
      const limit = tripAmps(
        part.regions.flatMap((r) => r.transitions.map((t) => t.when)),
        `${part.id}.${element.id}`,
      );
      if (limit <= wire.ampacityAmps) continue;
      const found = `${wire.ampacityAmps} A behind ${part.id}.${element.id}`;
      finder.report(wire, 'ampacityAmps', 'driver-above-wire', found, `a wire for ${limit} A`);
    }
  }
}

function tripAmps(guards: readonly Guard[], element: string): number {
  const own = guards.flatMap((g) =>
    'amps' in g && g.amps.includes(element) && g.above !== undefined ? [g.above] : [],
  );
  return Math.max(0, ...own);
}

function checkLoads(names: Names, finder: Finder, graph: CircuitGraph, sources: Sources): void {
  // Through a motor at rest current finds its way on to the motor's ground.
  const motors = elementsWith(names, 'motor');
  const ground = reachFrom(graph, [...sources.minus, ...sources.either], WHOLE);
  for (const motor of motors) if (ground.has(motor.b)) ground.add(motor.a);
  const feed = reachFrom(graph, [...sources.plus, ...sources.either], WHOLE);
  for (const [p, part] of names.book.parts.entries()) {
    for (const [i, element] of names.contents[p].elements.entries()) {
      if (!isLoad(part, element)) continue;
      const { a, b } = element;
      const where = part.kind === 'relay' ? 'coil' : `elements[${i}]`;
      const ends = `${part.id}.${element.id}, ${a} to ${b}`;
      if (!feed.has(a) && !feed.has(b)) finder.report(part, where, 'load-without-feed', ends, 'a way from the battery');
      else if (!(feed.has(a) && ground.has(b)) && !(feed.has(b) && ground.has(a))) {
        finder.report(part, where, 'load-without-ground', ends, 'a way back to the battery');
      }
    }
  }
}

function checkStarter(names: Names, finder: Finder, graph: CircuitGraph, sources: Sources): void {
  const thick = { fuses: false, drivers: false, leastMm2: STARTER_CABLE_MM2 };
  const plus = reachFrom(graph, sources.plus, thick);
  const minus = reachFrom(graph, sources.minus, thick);
  for (const part of names.book.parts) {
    if (part.kind !== 'starter') continue;
    const motor = part.elements.findIndex((e) => e.law.kind === 'motor');
    const contact = part.elements.findIndex((e) => e.law.kind === 'contact');
    if (motor < 0 || contact < 0) {
      finder.report(part, 'elements', 'starter-incomplete', part.id, 'a contact and a motor');
      continue;
    }
    const { a } = part.elements[contact];
    const { b } = part.elements[motor];
    const expected = `an unfused cable of ${STARTER_CABLE_MM2} mm² or more`;
    if (!plus.has(a)) finder.report(part, `elements[${contact}].a`, 'starter-feed', a, `${expected} from the battery`);
    if (!minus.has(b)) finder.report(part, `elements[${motor}].b`, 'starter-ground', b, `${expected} to the battery`);
  }
}

/** Ohms that belong to the wire's length and section: a wrong figure would be a fault that nobody set. */
function checkCopper(finder: Finder, wire: WireSpec): void {
  const least = (COPPER * wire.metres) / wire.mm2;
  const most = least + ENDS_OHMS;
  if (wire.ohms >= least && wire.ohms <= most) return;
  const expected = `${least.toFixed(6)} to ${most.toFixed(6)} for ${wire.metres} m of ${wire.mm2} mm²`;
  finder.report(wire, 'ohms', 'wrong-ohms', String(wire.ohms), expected);
}

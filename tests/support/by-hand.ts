/**
 * The netlist of a faulty machine with its faults written in by hand: a chafed wire as three resistors and a node of its
 * own, a path between two points as one resistor, a bad joint as ohms in series. What the machine made of them (it has
 * no such nodes) is left out, so that ngspice judges that too.
 */
import { compileGuard, type ModelElement, netlistOf, nodeOf, type World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { reachedFrom } from './reach.ts';

interface Told {
  series: number;
  open: boolean;
  closed: boolean;
  factor: number;
  ohms?: number;
}

const node = (index: number): string => (index < 0 ? '0' : `n${index}`);

/** The world's own netlist, the faults apart; states, sources and what moves are as the world has them. */
export function netlistByHand(world: World, title: string): string {
  const { model } = world;
  const told = new Map<string, Told>();
  const tell = (element: string): Told => {
    const known = told.get(element) ?? { series: 0, open: false, closed: false, factor: 1 };
    told.set(element, known);
    return known;
  };
  const added: string[] = [];
  const spots = spotsOf(world.changes);
  for (const [k, change] of world.changes.entries()) {
    if ('element' in change && spots.has(change.element)) continue;
    if (change.kind === 'series' && change.ohms === null) tell(change.element).open = true;
    else if (change.kind === 'series') tell(change.element).series += change.ohms ?? 0;
    else if (change.kind === 'ohms') tell(change.element).ohms = change.ohms;
    else if (change.kind === 'drift') tell(change.element).factor *= change.factor;
    else if (change.kind === 'closed') tell(change.element).closed = true;
    else if (change.kind === 'bridge') {
      const [a, b] = [change.a, change.b].map((point) => node(nodeOf(model, point)));
      if (a !== b) added.push(`RHAND${k} ${a} ${b} ${change.ohms}`);
    } else if (change.kind === 'chafe') {
      const there = change.to.startsWith('W:') ? `there${k}` : node(nodeOf(model, change.to));
      added.push(`RTOUCH${k} bare${k} ${there} ${change.ohms}`);
    }
  }
  const replaced = new Set<number>();
  for (const [id, how] of told) {
    const e = model.elementIndex.get(id) ?? -1;
    const { law } = model.elements[e];
    if (law.kind !== 'resistance' && law.kind !== 'contact') continue;
    replaced.add(e);
    const ohms = ohmsOf(world, model.elements[e], how);
    if (ohms !== null) added.push(`RHANDE${e} ${node(model.elements[e].a)} ${node(model.elements[e].b)} ${ohms}`);
  }
  for (const [id, own] of spots) {
    const e = model.elementIndex.get(id) ?? -1;
    replaced.add(e);
    added.push(...laid(world, model.elements[e], own));
  }
  const kept = netlistOf(world, title)
    .split('\n')
    .filter((line) => {
      const own = /^R(\d+) /.exec(line);
      return !line.startsWith('RB') && !(own !== null && replaced.has(Number(own[1])));
    });
  const end = kept.indexOf('.op');
  return holdIslands([...kept.slice(0, end), ...added, ...kept.slice(end)]).join('\n');
}

/** Ohms to ground of a node that hangs on nothing and has no source near it: it has 0 V whatever they are. */
const HOLDING_OHMS = 1e6;

/**
 * An island that only its leaks of 1e-12 S tie down is a singular matrix to ngspice where 0.05 mohm lies in it: no double
 * holds both. A dead one is held with more; one with a source in it is left as it is.
 */
function holdIslands(lines: readonly string[]): string[] {
  const ends = (line: string): [string, string] => {
    const [, a, b] = line.split(' ');
    return [a, b];
  };
  const isLeak = (line: string): boolean => /^RL\d/.test(line);
  const elements = lines.filter((line) => /^[RI]/.test(line) && !isLeak(line));
  // A source's two ends count as tied to ground, so that all of its island is left alone.
  const pairs = elements.flatMap((line): [string, string][] => {
    const [a, b] = ends(line);
    return line.startsWith('I')
      ? [
          [a, '0'],
          [b, '0'],
        ]
      : [[a, b]];
  });
  const alive = reachedFrom('0', pairs);
  return lines.map((line) => {
    const [node] = ends(line);
    return isLeak(line) && !alive.has(node) ? `${line.split(' ')[0]} ${node} 0 ${HOLDING_OHMS}` : line;
  });
}

function ohmsOf(world: World, element: ModelElement, how: Told): number | null {
  const { law, when } = element;
  const on = how.closed || when === undefined || compileGuard(world.model, when)(world);
  if (how.open || (law.kind !== 'resistance' && law.kind !== 'contact')) return null;
  if (on) return (how.ohms ?? law.ohms) * how.factor + how.series;
  return law.kind === 'contact' && law.openOhms !== undefined ? law.openOhms + how.series : null;
}

/** A bare node on a wire, or ohms in its copper (null: parted), at a share of its length. */
type WireSpot = { at: number; bare: string } | { at: number; ohms: number | null };

/** By wire: what has happened along it. Only wires that touch something are laid piece by piece. */
function spotsOf(changes: readonly Change[]): Map<string, WireSpot[]> {
  const spots = new Map<string, WireSpot[]>();
  const add = (wire: string, spot: WireSpot): void => {
    spots.set(wire, [...(spots.get(wire) ?? []), spot]);
  };
  for (const [k, change] of changes.entries()) {
    if (change.kind !== 'chafe') continue;
    add(`W:${change.wire}`, { at: change.at, bare: `bare${k}` });
    if (change.to.startsWith('W:')) add(change.to, { at: change.toAt ?? 0.5, bare: `there${k}` });
  }
  for (const change of changes) {
    if (change.kind !== 'series' || !spots.has(change.element)) continue;
    add(change.element, { at: change.at ?? 0.5, ohms: change.ohms });
  }
  return spots;
}

/** A wire from end to end as resistors between its bare nodes. */
function laid(world: World, wire: ModelElement, spots: readonly WireSpot[]): string[] {
  if (wire.law.kind !== 'resistance') throw new Error(`${wire.id} has no ohms`);
  const own = world.changes.find((c) => c.kind === 'ohms' && c.element === wire.id);
  const ohms = own?.kind === 'ohms' ? own.ohms : wire.law.ohms;
  const lines: string[] = [];
  let [from, since, added, whole] = [node(wire.a), 0, 0, true];
  const reach = (to: string, at: number): void => {
    const piece = ohms * (at - since) + added;
    if (whole) lines.push(`RPIECE${wire.id.slice(2)}${lines.length} ${from} ${to} ${Math.max(piece, 1e-9)}`);
    [from, since, added, whole] = [to, at, 0, true];
  };
  const inOrder = [...spots].sort((p, q) => p.at - q.at || Number('bare' in p) - Number('bare' in q));
  for (const spot of inOrder) {
    if ('bare' in spot) reach(spot.bare, spot.at);
    else if (spot.ohms === null) whole = false;
    else added += spot.ohms;
  }
  reach(node(wire.b), 1);
  return lines;
}

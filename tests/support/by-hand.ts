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
  ohms?: number;
}

const node = (index: number): string => (index < 0 ? '0' : `n${index}`);

/** The world's own netlist, the faults apart; states, sources and what moves are as the world has them. */
export function netlistByHand(world: World, title: string): string {
  const { model } = world;
  const told = new Map<string, Told>();
  const tell = (element: string): Told => {
    const known = told.get(element) ?? { series: 0, open: false, closed: false };
    told.set(element, known);
    return known;
  };
  const added: string[] = [];
  const chafed = new Set<string>();
  for (const [k, change] of world.changes.entries()) {
    if (change.kind === 'series' && change.ohms === null) tell(change.element).open = true;
    else if (change.kind === 'series') tell(change.element).series += change.ohms ?? 0;
    else if (change.kind === 'ohms') tell(change.element).ohms = change.ohms;
    else if (change.kind === 'closed') tell(change.element).closed = true;
    else if (change.kind === 'bridge') {
      const [a, b] = [change.a, change.b].map((point) => node(nodeOf(model, point)));
      if (a !== b) added.push(`RHAND${k} ${a} ${b} ${change.ohms}`);
    } else if (change.kind === 'chafe') {
      chafed.add(`W:${change.wire}`);
      added.push(...star(world, change, k));
    }
  }
  const replaced = new Set<number>();
  for (const [id, how] of told) {
    const e = model.elementIndex.get(id) ?? -1;
    const { law } = model.elements[e];
    if (law.kind !== 'resistance' && law.kind !== 'contact') continue;
    if (chafed.has(id)) throw new Error(`${id} is chafed and has another fault: not written by hand`);
    replaced.add(e);
    const ohms = ohmsOf(world, model.elements[e], how);
    if (ohms !== null) added.push(`RHANDE${e} ${node(model.elements[e].a)} ${node(model.elements[e].b)} ${ohms}`);
  }
  for (const id of chafed) replaced.add(model.elementIndex.get(id) ?? -1);
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
  if (on) return (how.ohms ?? law.ohms) + how.series;
  return law.kind === 'contact' && law.openOhms !== undefined ? law.openOhms + how.series : null;
}

function star(world: World, change: Extract<Change, { kind: 'chafe' }>, k: number): string[] {
  const { model } = world;
  const wire = model.elements[model.elementIndex.get(`W:${change.wire}`) ?? -1];
  if (wire.law.kind !== 'resistance') throw new Error(`${change.wire} has no ohms`);
  return [
    `RNEAR${k} ${node(wire.a)} bare${k} ${wire.law.ohms * change.at}`,
    `RFAR${k} bare${k} ${node(wire.b)} ${wire.law.ohms * (1 - change.at)}`,
    `RTOUCH${k} bare${k} ${node(nodeOf(model, change.to))} ${change.ohms}`,
  ];
}

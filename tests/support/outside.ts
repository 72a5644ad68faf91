/** The outside judge at work: the machine's own netlist solved by ngspice, and every point held against ours. */
import { expect } from 'vitest';
import { netlistOf, type World } from '../../src/machine/index.ts';
import { solveNetlist } from './ngspice.ts';

/** Both solve in doubles, so this is far tighter than the 1 mV and 0.1 % that a meter could tell. */
const VOLTS = 1e-5;
const SHARE = 1e-6;

/** Long enough for A1 to wake; then the crankshaft has its speed and has not fired. A chattering machine is caught so. */
const WOKEN_MS = 1000;
const HELD_MS = 600;
/** The engine has fired, and the key is back in run: the alternator has its volts. */
const FIRED_MS = 3000;

/** Not a position of the key but what follows from the last: let go after the engine had time to fire. */
export const LET_GO = 'let go';

/** Where the controls stand, the key last: the others are set before it is turned. */
export type Stand = Readonly<Record<string, string>>;

/** Turns the key through its positions in the order of the book up to the wanted one, as a hand does. */
export function bring(world: World, stand: Stand): World {
  const { key, ...others } = stand;
  for (const [control, value] of Object.entries(others)) world.setControl(control, value);
  const positions = world.model.book.controls.find((c) => c.id === 'key')?.values ?? [];
  const last = key === LET_GO ? positions.length - 1 : positions.indexOf(key);
  for (const position of positions.slice(0, last + 1)) {
    if (position === positions[last]) break;
    world.setControl('key', position);
    world.advance(WOKEN_MS);
  }
  world.setControl('key', positions[last]);
  world.advance(HELD_MS);
  if (key !== LET_GO) return world;
  world.advance(FIRED_MS);
  world.setControl('key', positions[last - 1]);
  world.advance(FIRED_MS);
  return world;
}

/** Counts what it has judged, and remembers where the two lay farthest apart. */
export class Outside {
  states = 0;
  volts = 0;
  where = 'nowhere';
  networks = 0;
  private readonly solved = new Map<string, Map<string, number>>();
  private readonly remembers: boolean;

  /** @param remembers a network that comes again is not solved again; for tens of thousands that takes too much memory */
  constructor(remembers = true) {
    this.remembers = remembers;
  }

  /** The network as it stands now, in this machine; or a netlist of the same machine that was written in another way. */
  async judge(world: World, title: string, netlist = netlistOf(world, 'network')): Promise<void> {
    const points = await this.solve(netlist);
    this.states++;
    // Every point of the book and the reference itself: none left out.
    expect(points.size, title).toBe(world.model.points.length + 1);
    const off: string[] = [];
    for (const [point, volts] of points) {
      const ours = world.voltsBetween(point, world.model.book.reference);
      const error = Math.abs(ours - volts);
      if (error > this.volts) [this.volts, this.where] = [error, `${point}: ${title}`];
      if (!(error <= VOLTS + SHARE * Math.abs(volts))) off.push(`${point}: ngspice ${volts}, here ${ours}`);
    }
    expect(off, title).toEqual([]);
  }

  summary(): string {
    return `${this.states} states, ${this.networks} networks, largest difference ${this.volts} V at ${this.where}`;
  }

  /** The same network, to the last digit of every element, is solved once. */
  private async solve(netlist: string): Promise<Map<string, number>> {
    const known = this.solved.get(netlist);
    if (known !== undefined) return known;
    this.networks++;
    const points = await solveNetlist(netlist);
    if (this.remembers) this.solved.set(netlist, points);
    return points;
  }
}

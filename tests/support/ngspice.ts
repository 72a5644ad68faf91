/** ngspice in this process (compiled to WebAssembly), the outside judge of every network: text in, node volts out. */
import { Simulation } from 'eecircuit-engine';

let engine: Promise<Simulation> | null = null;
let solved = 0;
/** ngspice keeps about 2 MB of each network and hangs when its 2 GB are full. */
const NETWORKS_AN_ENGINE = 400;

/** A warm engine, since its start takes about half a second; a new one when the old is nearly full. */
async function warmEngine(): Promise<Simulation> {
  if (solved++ % NETWORKS_AN_ENGINE === 0) engine = null;
  engine ??= (async () => {
    const simulation = new Simulation();
    await simulation.start();
    return simulation;
  })();
  return engine;
}

/** SPICE reads the first line as a title, whatever it says. Volts by node name in lower case; node 0 is not listed. */
export async function solveNodes(netlist: string): Promise<Map<string, number>> {
  const simulation = await warmEngine();
  simulation.setNetList(netlist);
  const result = await simulation.runSim();
  const errors = simulation.getError();
  if (errors.length > 0) throw new Error(`ngspice: ${errors.join('; ')}`);
  if (result.dataType !== 'real') throw new Error('ngspice gave complex numbers for an operating point');
  const volts = new Map<string, number>([['0', 0]]);
  for (const column of result.data) {
    const name = nodeName(column.name);
    // With a single node ngspice also writes it out under the name of its list of all vectors.
    if (column.type === 'voltage' && name !== 'all') volts.set(name, column.values[column.values.length - 1]);
  }
  return volts;
}

/** `V(n12)` and `n12` both name the node. */
function nodeName(column: string): string {
  return column.toLowerCase().replace(/^v\((.*)\)$/, '$1');
}

/** Volts of every point that the netlist names in a line `* point X1.2.a = n17`. */
export async function solveNetlist(netlist: string): Promise<Map<string, number>> {
  const nodes = await solveNodes(netlist);
  const volts = new Map<string, number>();
  for (const line of netlist.split('\n')) {
    const named = /^\* point (.+) = (\S+)$/.exec(line);
    if (named === null) continue;
    const value = nodes.get(named[2]);
    if (value === undefined) throw new Error(`ngspice has no node ${named[2]} for point ${named[1]}`);
    volts.set(named[1], value);
  }
  return volts;
}

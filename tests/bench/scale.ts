/** What an operating point costs on machines that are several times this one: the curve should be a straight line. */
import { makePlan, Network, REFERENCE } from '../../src/circuit/index.ts';
import { type Model, nodeOf, type World } from '../../src/machine/index.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { STATES } from '../support/states.ts';
import { type Figure, figure, median, nearly, timed } from './figure.ts';

const SIZES = [1, 2, 5, 10];
const RUNS = 300;
const WARM = 200;
/** Of the smallest; the larger ones take longer and get fewer. */
const PLANS = 30;
/** A wire from a place to the same place of the next harness, ohms. */
const TIE_OHMS = 0.005;
const POST = 'G1.+';
const BATTERY = 'G1.cell';

interface Repeated {
  nodeCount: number;
  edges: [number, number][];
  siemens: number[];
  norton: number[];
}

/**
 * The harness with all that hangs on it, so many times, at one battery that is as many times as strong; at these nodes
 * it is wired to the next. By symmetry those wires carry nothing, and each harness has the volts of the one.
 */
function repeated(world: World, times: number, ties: readonly number[]): Repeated {
  const { model } = world;
  const { network } = world.electrics;
  const post = nodeOf(model, POST);
  const battery = model.elementIndex.get(BATTERY);
  const nodes = model.points.length;
  const of = (node: number, copy: number): number => (node === REFERENCE || node === post ? node : node + copy * nodes);
  const out: Repeated = { nodeCount: nodes * times, edges: [], siemens: [], norton: [] };
  const lay = (a: number, b: number, siemens: number, norton: number): void => {
    out.edges.push([a, b]);
    out.siemens.push(siemens);
    out.norton.push(norton);
  };
  for (let copy = 0; copy < times; copy++) {
    for (let e = 0; e < network.plan.edgeCount; e++) {
      const [a, b] = [of(network.plan.edgeA[e], copy), of(network.plan.edgeB[e], copy)];
      if (e !== battery) lay(a, b, network.siemens[e], network.norton[e]);
      else if (copy === 0) lay(a, b, network.siemens[e] * times, network.norton[e] * times);
    }
    if (copy > 0) for (const node of ties) lay(of(node, copy - 1), of(node, copy), 1 / TIE_OHMS, 0);
  }
  return out;
}

/** Wires of the bus, by the beginning of their numbers. */
const BUS = /^90[12]/;

/** As on a machine with more of everything: one frame to which all grounds are bolted, one bus through all harnesses. */
function frameAndBus({ book, pointIndex }: Model): number[] {
  const splices = book.splices.filter(({ wires }) => wires.some((wire) => BUS.test(wire))).map(({ id }) => id);
  const studs = book.grounds.map(({ part }) => `${part}.M`);
  return [...splices, ...studs].flatMap((point) => pointIndex.get(point) ?? []);
}

/** Harder than any harness: a grid of all splices by all machines, whose fill grows faster than itself. */
function everySplice({ book, pointIndex }: Model): number[] {
  return book.splices.flatMap(({ id }) => pointIndex.get(id) ?? []);
}

export async function scaleFigures(): Promise<Figure[]> {
  const world = drive({ model: hobbinModel(), settings: STATES.crank });
  const [harness, grid] = [frameAndBus(world.model), everySplice(world.model)];
  const framed = SIZES.map((size) => ({ size, machine: repeated(world, size, harness) }));
  const gridded = SIZES.map((size) => ({ size, machine: repeated(world, size, grid) }));
  return [
    ...(await pointCurve(world, 'solve.scale', 'frame and bus in one', framed)),
    ...(await planCurve('solve.scale.plan', framed)),
    ...(await pointCurve(world, 'solve.scale.grid', 'every splice wired to the next', gridded)),
  ];
}

interface Sized {
  size: number;
  machine: Repeated;
}

const straight = (size: number, first: number) => ({
  name: `${size} times the first: a straight line`,
  value: size * first,
});

async function pointCurve(world: World, name: string, how: string, list: readonly Sized[]): Promise<Figure[]> {
  const out: Figure[] = [];
  let first = 0;
  for (const { size, machine } of list) {
    const network = Network.of(machine.nodeCount, machine.edges);
    network.siemens.set(machine.siemens);
    network.norton.set(machine.norton);
    const micros = 1000 * median(await timed(() => solveAll(network), RUNS, WARM));
    compare(world, network, size);
    if (size === SIZES[0]) first = micros;
    const unit = `µs for ${machine.nodeCount} nodes, ${how}`;
    out.push(figure(`${name}.${size}`, micros, unit, RUNS, straight(size, first)));
  }
  return out;
}

/** The order of elimination, which is made once for a machine. */
async function planCurve(name: string, list: readonly Sized[]): Promise<Figure[]> {
  const out: Figure[] = [];
  let first = 0;
  for (const { size, machine } of list) {
    const count = Math.ceil(PLANS / size);
    const make = (): void => void makePlan(machine.nodeCount, machine.edges);
    const ms = median(await timed(make, count, Math.ceil(count / 3)));
    if (size === SIZES[0]) first = ms;
    const unit = `ms to order ${machine.nodeCount} nodes, once for a machine`;
    out.push(figure(`${name}.${size}`, ms, unit, count, straight(size, first)));
  }
  return out;
}

/** All of it, and every node. */
function solveAll(network: Network): void {
  network.factor();
  network.solve();
  if (network.volts.length === 0) throw new Error('nothing was solved');
}

function compare(world: World, network: Network, size: number): void {
  const { volts } = world.electrics.network;
  const post = nodeOf(world.model, POST);
  for (let copy = 0; copy < size; copy++) {
    volts.forEach((v, n) => {
      if (n !== post && !nearly(network.volts[n + copy * volts.length], v)) {
        throw new Error(`machine ${copy + 1} of ${size}: other volts at ${world.model.points[n]}`);
      }
    });
  }
}

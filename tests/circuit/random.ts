/** Random networks for property tests: a tree so that all hangs together, more edges at will, some with sources. */
import fc from 'fast-check';
import { Network, REFERENCE } from '../../src/circuit/index.ts';

interface RandomEdge {
  a: number;
  b: number;
  ohms: number;
  /** Volts behind the ohms; 0 for a plain resistor. */
  volts: number;
}

export interface RandomNetwork {
  nodes: number;
  edges: RandomEdge[];
}

/** Ohms spread evenly over decades. */
export function ohmsBetween(least: number, most: number): fc.Arbitrary<number> {
  return fc
    .tuple(fc.integer({ min: least, max: most }), fc.double({ min: 1, max: 9.999, noNaN: true }))
    .map(([d, m]) => m * 10 ** d);
}

interface Shape {
  nodes: [least: number, most: number];
  ohms: fc.Arbitrary<number>;
  /** Sources only from the reference: then no current is ever taken out of a node. */
  fedFromReference?: boolean;
}

export function randomNetwork({ nodes, ohms, fedFromReference = false }: Shape): fc.Arbitrary<RandomNetwork> {
  const source = fc.double({ min: 0.5, max: 24, noNaN: true });
  return fc.integer({ min: nodes[0], max: nodes[1] }).chain((n) => {
    const anyNode = fc.integer({ min: REFERENCE, max: n - 1 });
    const volts = fedFromReference
      ? fc.constant(0)
      : fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: source });
    const tree = Array.from({ length: n }, (_, a) =>
      fc.record({ a: fc.constant(a), b: fc.integer({ min: REFERENCE, max: a - 1 }), ohms, volts }),
    );
    const more = fc.array(fc.record({ a: anyNode, b: anyNode, ohms, volts }), { maxLength: 2 * n });
    const feed = fc.record({ a: fc.integer({ min: 0, max: n - 1 }), b: fc.constant(REFERENCE), ohms, volts: source });
    return fc
      .tuple(fc.tuple(...tree), more, feed)
      .map(([first, second, third]) => ({ nodes: n, edges: [...first, ...second, third] }));
  });
}

export function build({ nodes, edges }: RandomNetwork, scale = 1): Network {
  const network = Network.of(
    nodes,
    edges.map((e): [number, number] => [e.a, e.b]),
  );
  edges.forEach((e, i) => {
    network.siemens[i] = 1 / (e.ohms * scale);
    network.norton[i] = e.volts / (e.ohms * scale);
  });
  network.factor();
  network.solve();
  return network;
}

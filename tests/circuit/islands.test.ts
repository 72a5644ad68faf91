/** What hangs free of everything, and what is laid across a network afterwards. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LEAK_SIEMENS, Network, REFERENCE } from '../../src/circuit/index.ts';
import { build, ohmsBetween, type RandomNetwork, randomNetwork } from './random.ts';

const METER_OHMS = 10e6;
const RUNS = { seed: 45, numRuns: 200, endOnFailure: true };

/** Two networks in one, the second without any path to the first or to the reference. */
function besides(main: RandomNetwork, island: RandomNetwork): RandomNetwork {
  const shift = (node: number) => (node === REFERENCE ? main.nodes : node + main.nodes + 1);
  const moved = island.edges.map((e) => ({ ...e, a: shift(e.a), b: shift(e.b) }));
  return { nodes: main.nodes + island.nodes + 1, edges: [...main.edges, ...moved] };
}

const small = randomNetwork({ nodes: [2, 10], ohms: ohmsBetween(-3, 5) });
const dead = small.map((random) => ({ ...random, edges: random.edges.map((e) => ({ ...e, volts: 0 })) }));

describe('floating islands', () => {
  it('a dead island rests at 0 V and leaves the rest of the network alone', () => {
    fc.assert(
      fc.property(small, dead, (main, island) => {
        const both = build(besides(main, island));
        const alone = build(main);
        for (let n = 0; n < main.nodes; n++) expect(both.volts[n]).toBeCloseTo(alone.volts[n], 9);
        for (let n = main.nodes; n < both.volts.length; n++) expect(Math.abs(both.volts[n])).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('a battery that floats keeps its volts between its own points, and a 10 Mohm meter to ground reads none', () => {
    fc.assert(
      fc.property(small, small, (main, island) => {
        const both = build(besides(main, island));
        const alone = build(island);
        const shift = main.nodes + 1;
        for (let n = 0; n < island.nodes; n++) {
          // Leaks of 1e-12 S through up to a megohm: a few microvolts.
          expect(both.between(n + shift, main.nodes)).toBeCloseTo(alone.volts[n], 4);
        }
        const point = shift + island.nodes - 1;
        const shown = (both.volts[point] * METER_OHMS) / (METER_OHMS + both.resistance(point, REFERENCE));
        expect(Math.abs(shown)).toBeLessThan(0.005);
      }),
      RUNS,
    );
  });

  it('between two islands an ohmmeter sees only the leaks', () => {
    const network = build(
      besides(
        { nodes: 1, edges: [{ a: 0, b: REFERENCE, ohms: 1, volts: 0 }] },
        { nodes: 1, edges: [{ a: 0, b: REFERENCE, ohms: 5, volts: 0 }] },
      ),
    );
    expect(network.resistance(2, 0)).toBeCloseTo(1 / (2 * LEAK_SIEMENS) + 1, -9);
    expect(network.resistance(1, 2)).toBeCloseTo(5, 9);
  });

  it('a network without any source is dead', () => {
    fc.assert(
      fc.property(dead, (random) => {
        expect([...build(random).volts].every((v) => v === 0)).toBe(true);
      }),
      RUNS,
    );
  });
});

describe('bridges', () => {
  const ends = fc.tuple(fc.nat(), fc.nat(), ohmsBetween(-3, 6));

  it('laid across a solved network are the same as built into it', () => {
    fc.assert(
      fc.property(
        randomNetwork({ nodes: [3, 20], ohms: ohmsBetween(-3, 5) }),
        fc.array(ends, { minLength: 1, maxLength: 4 }),
        (random, list) => {
          const laid = list
            .map(([p, q, ohms]) => ({ a: p % random.nodes, b: (q % (random.nodes + 1)) - 1, ohms, volts: 0 }))
            .filter((e) => e.a !== e.b);
          const bridged = build(random);
          bridged.bridges = laid.map(({ a, b, ohms }) => ({ a, b, siemens: 1 / ohms }));
          bridged.factor();
          bridged.solve();
          const built = build({ ...random, edges: [...random.edges, ...laid] });
          built.volts.forEach((v, n) => {
            expect(Math.abs(bridged.volts[n] - v)).toBeLessThan(1e-8);
          });
          const [i, j] = [0, random.nodes - 1];
          expect(Math.abs(bridged.resistance(i, j) - built.resistance(i, j))).toBeLessThanOrEqual(
            1e-8 + 1e-6 * built.resistance(i, j),
          );
        },
      ),
      RUNS,
    );
  });

  it('from an island to the rest are the same as built in: an isolated wire shorted to ground reads its short', () => {
    fc.assert(
      fc.property(small, dead, fc.tuple(fc.nat(), fc.nat(), ohmsBetween(-3, 3)), (main, island, [p, q, ohms]) => {
        const shift = main.nodes + 1;
        const [inside, outside] = [shift + (p % island.nodes), q % main.nodes];
        const random = besides(main, island);
        const bridged = build(random);
        // Two of them from the one island, as a chafed wire has: from both sides of the worn place.
        bridged.bridges = [
          { a: inside, b: outside, siemens: 1 / ohms },
          { a: main.nodes, b: outside, siemens: 1 / ohms },
        ];
        bridged.factor();
        bridged.solve();
        const laid = [inside, main.nodes].map((a) => ({ a, b: outside, ohms, volts: 0 }));
        const built = build({ ...random, edges: [...random.edges, ...laid] });
        for (let n = 0; n < built.volts.length; n++) expect(bridged.volts[n]).toBeCloseTo(built.volts[n], 6);
        const read = bridged.resistance(inside, outside);
        expect(read).toBeLessThanOrEqual(ohms * 1.00001);
        expect(Math.abs(read - built.resistance(inside, outside))).toBeLessThanOrEqual(1e-6 * read);
      }),
      RUNS,
    );
  });

  it('taken away again leave no trace', () => {
    const random = {
      nodes: 2,
      edges: [
        { a: 0, b: REFERENCE, ohms: 1, volts: 12 },
        { a: 0, b: 1, ohms: 2, volts: 0 },
        { a: 1, b: REFERENCE, ohms: 3, volts: 0 },
      ],
    };
    const network = build(random);
    const before = [...network.volts];
    network.bridges = [{ a: 1, b: REFERENCE, siemens: 1000 }];
    network.factor();
    network.solve();
    expect(network.volts[1]).toBeLessThan(0.01);
    network.bridges = [];
    network.factor();
    network.solve();
    expect([...network.volts]).toEqual(before);
  });

  it('can carry a battery to an island: a jumper lead', () => {
    const network = Network.of(2, [
      [0, REFERENCE],
      [1, REFERENCE],
    ]);
    network.siemens.set([1 / 0.01, 1 / 10]);
    network.norton[0] = 12 / 0.01;
    network.bridges = [{ a: 0, b: 1, siemens: 1 / 0.05 }];
    network.factor();
    network.solve();
    expect(network.volts[1]).toBeCloseTo((12 * 10) / 10.06, 9);
  });
});

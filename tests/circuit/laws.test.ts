/** Kirchhoff, Tellegen, superposition and reciprocity hold in every network. The choice is fixed, so a failure comes again. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LEAK_SIEMENS, type Network, REFERENCE } from '../../src/circuit/index.ts';
import { exactVolts } from './exact.ts';
import { build, ohmsBetween, type RandomNetwork, randomNetwork } from './random.ts';

const RUNS = { seed: 45, numRuns: 300, endOnFailure: true };
/** A wiring harness: battery cable to sensor input, ohms. */
const harness = randomNetwork({ nodes: [2, 30], ohms: ohmsBetween(-4, 6) });
/** Eighteen decades side by side. */
const wild = randomNetwork({ nodes: [2, 7], ohms: ohmsBetween(-9, 8) });

const at = (network: Network, node: number) => (node === REFERENCE ? 0 : network.volts[node]);

/** What rounding of the two end voltages alone can do to the edge's current: some units of the last place. */
function rounding(network: Network, edge: number): number {
  const { edgeA, edgeB } = network.plan;
  const volts = Math.abs(at(network, edgeA[edge])) + Math.abs(at(network, edgeB[edge]));
  return 1e-13 * (network.siemens[edge] * volts + Math.abs(network.norton[edge]));
}

/**
 * A source between two nodes is two equal and opposite currents, its short-circuit amperes. What rounding leaves of all of
 * them together may turn up at any node.
 */
function residue(network: Network): number {
  return 2e-15 * network.norton.reduce((sum, amps) => sum + Math.abs(amps), 0);
}

function kirchhoff(network: Network): void {
  const { plan } = network;
  const left = residue(network);
  const sum = new Float64Array(plan.nodeCount);
  const allowed = new Float64Array(plan.nodeCount);
  for (let e = 0; e < plan.edgeCount; e++) {
    const ends: [number, number][] = [
      [plan.edgeA[e], 1],
      [plan.edgeB[e], -1],
    ];
    for (const [node, sign] of ends) {
      if (node === REFERENCE) continue;
      sum[node] += sign * network.amps(e);
      allowed[node] += rounding(network, e);
    }
  }
  for (let n = 0; n < plan.nodeCount; n++) {
    expect(Math.abs(sum[n] + LEAK_SIEMENS * network.volts[n]), `current into node ${n}`).toBeLessThanOrEqual(
      allowed[n] + left,
    );
  }
}

describe('laws of circuits', () => {
  it("Kirchhoff's current law: nothing is left over at any node", () => {
    fc.assert(
      fc.property(harness, (random) => kirchhoff(build(random))),
      RUNS,
    );
    fc.assert(
      fc.property(wild, (random) => kirchhoff(build(random))),
      RUNS,
    );
  });

  it('power given by the sources is the heat in all resistances', () => {
    fc.assert(
      fc.property(harness, (random) => {
        const network = build(random);
        let given = 0;
        let heat = 0;
        let allowed = 0;
        random.edges.forEach((edge, e) => {
          const amps = network.amps(e);
          given -= edge.volts * amps;
          if (edge.a !== edge.b) heat += amps * amps * edge.ohms;
          allowed += rounding(network, e) * (edge.volts + 2 * Math.abs(amps) * edge.ohms);
        });
        // A loop from a node to itself is a battery shorted on its own: the network need not know of it.
        random.edges.forEach((edge, e) => {
          if (edge.a === edge.b) given += edge.volts * network.amps(e);
        });
        expect(Math.abs(given - heat)).toBeLessThanOrEqual(allowed + 1e-8 + 1e-11 * heat);
      }),
      RUNS,
    );
  });

  it('superposition: all sources together are the sum of each alone', () => {
    fc.assert(
      fc.property(harness, (random) => {
        const whole = build(random);
        const sum = new Float64Array(random.nodes);
        random.edges.forEach((edge, e) => {
          if (edge.volts === 0) return;
          const alone = build({
            ...random,
            edges: random.edges.map((other, k) => (k === e ? other : { ...other, volts: 0 })),
          });
          alone.volts.forEach((v, n) => {
            sum[n] += v;
          });
        });
        whole.volts.forEach((v, n) => {
          const allowed = residue(whole) * whole.resistance(n, REFERENCE);
          expect(Math.abs(v - sum[n])).toBeLessThan(1e-11 * (1 + Math.abs(v)) + allowed);
        });
      }),
      { ...RUNS, numRuns: 60 },
    );
  });

  it('reciprocity: an ampere here lifts there what an ampere there lifts here', () => {
    fc.assert(
      fc.property(harness, fc.nat(), fc.nat(), (random, p, q) => {
        const network = build(random);
        const [i, j] = [p % random.nodes, q % random.nodes];
        const there = network.unit(i, REFERENCE)[j];
        const here = network.unit(j, REFERENCE)[i];
        expect(Math.abs(there - here)).toBeLessThanOrEqual(1e-12 * Math.abs(there));
      }),
      RUNS,
    );
  });

  it('scale: resistances all a thousand million times larger or smaller leave every voltage as it is', () => {
    const fc9 = fc.integer({ min: -9, max: 9 });
    const small = randomNetwork({ nodes: [2, 12], ohms: ohmsBetween(-3, 0) });
    fc.assert(
      fc.property(small, fc9, (random, decades) => {
        const [plain, scaled] = [build(random), build(random, 10 ** decades)];
        // At 1e9 the leaks of 1e-12 S stand beside ohms of 1e10 and do count: up to their share of the conductance.
        const leaks = random.nodes * random.nodes * LEAK_SIEMENS * 10 ** (decades + 1);
        plain.volts.forEach((v, n) => {
          expect(Math.abs(v - scaled.volts[n])).toBeLessThan(24 * (1e-9 + leaks));
        });
      }),
      RUNS,
    );
  });
});

describe('accuracy against exact arithmetic', () => {
  it('keeps a relative 1e-14 at every node across eighteen decades of ohms where one source feeds from the reference', () => {
    const fed = randomNetwork({ nodes: [2, 7], ohms: ohmsBetween(-9, 8), fedFromReference: true });
    fc.assert(
      fc.property(fed, (random) => {
        const network = build(random);
        exactVolts(network).forEach((v, n) => {
          expect(Math.abs(network.volts[n] - v)).toBeLessThanOrEqual(1e-14 * Math.abs(v));
        });
      }),
      RUNS,
    );
  });

  it('keeps a microvolt with sources anywhere and ohms as in a machine', () => {
    fc.assert(
      fc.property(randomNetwork({ nodes: [2, 8], ohms: ohmsBetween(-4, 6) }), (random) => {
        const network = build(random);
        exactVolts(network).forEach((v, n) => {
          expect(Math.abs(network.volts[n] - v)).toBeLessThanOrEqual(1e-6);
        });
      }),
      RUNS,
    );
  });

  it('keeps a nanovolt between the ends of a battery cable that carries 1000 A', () => {
    const random: RandomNetwork = {
      nodes: 3,
      edges: [
        { a: 0, b: REFERENCE, ohms: 0.005, volts: 12.65 },
        { a: 0, b: 1, ohms: 0.0003, volts: 0 },
        { a: 1, b: 2, ohms: 0.0003, volts: 0 },
        { a: 2, b: REFERENCE, ohms: 0.007, volts: 0 },
      ],
    };
    const amps = 12.65 / (0.005 + 0.0003 + 0.0003 + 0.007);
    expect(Math.abs(build(random).between(0, 1) - amps * 0.0003)).toBeLessThan(1e-9);
  });
});

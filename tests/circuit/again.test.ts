/** What is done again in part, or left until it is asked for, comes out to the last bit as if all had been done. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Network, REFERENCE } from '../../src/circuit/index.ts';
import { build, ohmsBetween, type RandomNetwork, randomNetwork } from './random.ts';

const RUNS = { seed: 45, numRuns: 200, endOnFailure: true };
const harness = randomNetwork({ nodes: [4, 40], ohms: ohmsBetween(-3, 6) });
/** Edges of the network, by any number, and what becomes of them: another resistance, or none at all. */
const changes = fc.array(fc.tuple(fc.nat(), fc.oneof(fc.constant(null), ohmsBetween(-3, 6))), {
  minLength: 1,
  maxLength: 3,
});

function poured(random: RandomNetwork, network: Network): Network {
  const whole = build(random);
  network.siemens.set(whole.siemens);
  network.norton.set(whole.norton);
  return network;
}

describe('an elimination done again where something moved', () => {
  it('is the whole elimination', () => {
    fc.assert(
      fc.property(harness, fc.array(changes, { minLength: 1, maxLength: 4 }), (random, rounds) => {
        const network = build(random);
        for (const round of rounds) {
          const edges = round.map(([pick]) => pick % random.edges.length);
          round.forEach(([, ohms], i) => {
            network.siemens[edges[i]] = ohms === null ? 0 : 1 / ohms;
          });
          network.refactor(edges);
          network.solve();
          const anew = new Network(network.plan);
          anew.siemens.set(network.siemens);
          anew.norton.set(network.norton);
          anew.factor();
          anew.solve();
          expect([...network.volts]).toEqual([...anew.volts]);
          expect(network.resistance(0, REFERENCE)).toBe(anew.resistance(0, REFERENCE));
        }
      }),
      RUNS,
    );
  });

  it('takes a bridge in, and another resistance of the same bridge', () => {
    fc.assert(
      fc.property(harness, fc.nat(), ohmsBetween(-3, 6), ohmsBetween(-3, 6), (random, pick, first, second) => {
        const network = build(random);
        const a = pick % (random.nodes - 1);
        for (const ohms of [first, second]) {
          network.bridges = [{ a, b: a + 1, siemens: 1 / ohms }];
          network.refactor([]);
          network.solve();
          const anew = new Network(network.plan);
          anew.siemens.set(network.siemens);
          anew.norton.set(network.norton);
          anew.bridges = network.bridges;
          anew.factor();
          anew.solve();
          expect([...network.volts]).toEqual([...anew.volts]);
        }
      }),
      RUNS,
    );
  });

  it('says whether anything moved', () => {
    const network = Network.of(2, [
      [0, 1],
      [1, REFERENCE],
    ]);
    network.siemens.set([1, 2]);
    network.refactor([0, 1]);
    const { generation } = network;
    network.refactor([0, 1]);
    expect(network.generation).toBe(generation);
    network.siemens[0] = 3;
    network.refactor([0]);
    expect(network.generation).toBeGreaterThan(generation);
  });
});

describe('nodes that are not watched', () => {
  it('have the same volts as ever when they are asked for, a current added afterwards included', () => {
    fc.assert(
      fc.property(
        harness,
        fc.array(fc.nat(), { maxLength: 4 }),
        fc.double({ min: -50, max: 50, noNaN: true }),
        (random, picks, amps) => {
          const whole = build(random);
          const sources = random.edges.map((_, e) => e);
          const watched = picks.map((pick) => pick % random.nodes);
          const some = poured(random, new Network(whole.plan, sources, watched));
          some.factor();
          for (const network of [whole, some]) {
            network.solve();
            network.superpose(network.unit(0, REFERENCE), amps);
          }
          for (const node of watched) expect(some.between(node, REFERENCE)).toBe(whole.between(node, REFERENCE));
          expect([...some.volts]).toEqual([...whole.volts]);
        },
      ),
      RUNS,
    );
  });
});

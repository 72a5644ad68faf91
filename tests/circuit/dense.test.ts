/** Star-mesh elimination against a dense solver of another hand, on seeded random networks and on the whole machine. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Network } from '../../src/circuit/index.ts';
import { denseVolts } from '../support/dense.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { patchChanges } from '../support/patch.ts';
import { STATES } from '../support/states.ts';
import { build, ohmsBetween, randomNetwork } from './random.ts';

const RUNS = { seed: 45, numRuns: 300, endOnFailure: true };
const RELATIVE = 1e-9;
/** Branches under an ohm have their current among the dense solver's unknowns. */
const LEAST_OHMS = 1;
/** Milliohm to 100 kilohm: what lies in a harness, and what doubles in a dense matrix still hold to 1e-9. */
const ohms = ohmsBetween(-3, 4);

interface Apart {
  /** Greatest difference, by each node's own volts or by the largest of the network. */
  share: number;
  /** How many nodes were compared. */
  nodes: number;
  /** Largest volts of a node that hangs on nothing. */
  floating: number;
}

function apart(network: Network, own: boolean, leastOhms = LEAST_OHMS): Apart {
  const { volts } = network;
  const top = Math.max(...[...volts].map(Math.abs));
  let [share, nodes, floating] = [0, 0, 0];
  denseVolts(network, leastOhms).forEach((dense, n) => {
    if (dense === null) {
      floating = Math.max(floating, Math.abs(volts[n]));
      return;
    }
    nodes++;
    const base = own ? Math.abs(volts[n]) : top;
    const off = Math.abs(dense - volts[n]);
    share = Math.max(share, off === 0 ? 0 : off / base);
  });
  return { share, nodes, floating };
}

describe('random networks', () => {
  it('one source from the reference: every node within 1e-9 of its own volts', () => {
    let compared = 0;
    fc.assert(
      fc.property(randomNetwork({ nodes: [2, 40], ohms, fedFromReference: true }), (random) => {
        const { share, nodes } = apart(build(random), true);
        compared += nodes;
        expect(share).toBeLessThanOrEqual(RELATIVE);
      }),
      RUNS,
    );
    expect(compared).toBeGreaterThan(5000);
  });

  it('sources anywhere: every node within 1e-9 of the largest volts (a small difference of large ones has no digits)', () => {
    fc.assert(
      fc.property(randomNetwork({ nodes: [2, 40], ohms }), (random) => {
        expect(apart(build(random), false).share).toBeLessThanOrEqual(RELATIVE);
      }),
      RUNS,
    );
  });

  it('with bridges laid across a solved network', () => {
    const ends = fc.tuple(fc.nat(), fc.nat(), ohms);
    const network = randomNetwork({ nodes: [3, 30], ohms, fedFromReference: true });
    fc.assert(
      fc.property(network, fc.array(ends, { minLength: 1, maxLength: 4 }), (random, list) => {
        const solved = build(random);
        solved.bridges = list.map(([a, b, r]) => ({ a: a % random.nodes, b: b % random.nodes, siemens: 1 / r }));
        solved.refactor([]);
        solved.solve();
        expect(apart(solved, true).share).toBeLessThanOrEqual(RELATIVE);
      }),
      { ...RUNS, numRuns: 100 },
    );
  });
});

describe('the whole machine', () => {
  const cases: [state: string, patch: string][] = [
    ['crank', 'set canok 1'],
    ['work', 'set canok 1'],
    ['run', 'wshort 207A 0.5 GND2.M 0.1; res W:101A 0.35'],
  ];
  it.each(cases)('state %s, %s: every point within 1e-9 of the volts of the battery', (state, patch) => {
    const model = hobbinModel();
    const world = drive({ model, settings: STATES[state], changes: patchChanges(patch) });
    const { share, nodes, floating } = apart(world.electrics.network, false, 0);
    expect(share).toBeLessThanOrEqual(RELATIVE);
    expect(nodes).toBeGreaterThan(0.9 * model.points.length);
    expect(floating).toBeLessThan(1e-6);
  });
});

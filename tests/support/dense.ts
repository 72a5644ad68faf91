/**
 * A second way to the same volts: modified nodal equations (Ho, Ruehli and Brennan, 1975: from memory) written out whole
 * and solved by LU with pivots, by a library that knows nothing of circuits (ml-matrix, MIT).
 */
import { LuDecomposition, Matrix } from 'ml-matrix';
import { LEAK_SIEMENS, type Network, REFERENCE } from '../../src/circuit/index.ts';
import { reachedFrom } from './reach.ts';

/** A conductance with its Norton current, driven from `b` to `a` inside it. */
interface Branch {
  a: number;
  b: number;
  siemens: number;
  amps: number;
}

function branchesOf(network: Network): Branch[] {
  const { plan, siemens, norton, bridges } = network;
  const own = Array.from({ length: plan.edgeCount }, (_, e) => ({
    a: plan.edgeA[e],
    b: plan.edgeB[e],
    siemens: siemens[e],
    amps: norton[e],
  }));
  return [...own, ...bridges.map((bridge) => ({ ...bridge, amps: 0 }))].filter((branch) => branch.a !== branch.b);
}

/**
 * Nodes that hang on the reference. One that hangs on nothing but its leak of 1e-12 S is lost to a dense solver beside
 * 1000 S (no double holds both); `tests/circuit/islands.test.ts` and ngspice judge those.
 */
function held(nodeCount: number, branches: readonly Branch[]): boolean[] {
  const pairs = branches.filter(({ siemens }) => siemens > 0).map(({ a, b }): [number, number] => [a, b]);
  const reached = reachedFrom(REFERENCE, pairs);
  return Array.from({ length: nodeCount }, (_, n) => reached.has(n));
}

/**
 * Volts by node; null where the node hangs on nothing.
 * @param leastOhms a branch of fewer ohms has its current among the unknowns: no large conductance then stands in a sum
 *   with a small one. 0 makes plain nodal equations, which are smaller.
 */
export function denseVolts(network: Network, leastOhms = 0): (number | null)[] {
  const { nodeCount } = network.plan;
  const branches = branchesOf(network);
  const isHeld = held(nodeCount, branches);
  let count = 0;
  const row = isHeld.map((is) => (is ? count++ : REFERENCE));
  const rowOf = (node: number): number => (node === REFERENCE ? REFERENCE : row[node]);
  const strong = branches.filter((branch) => branch.siemens * leastOhms > 1);
  const matrix = Matrix.zeros(count + strong.length, count + strong.length);
  const given = Matrix.zeros(count + strong.length, 1);
  const add = (target: Matrix, i: number, j: number, value: number): void => {
    if (i !== REFERENCE && j !== REFERENCE) target.set(i, j, target.get(i, j) + value);
  };
  for (let i = 0; i < count; i++) matrix.set(i, i, LEAK_SIEMENS);
  for (const branch of branches) {
    const [a, b] = [rowOf(branch.a), rowOf(branch.b)];
    const current = strong.indexOf(branch);
    if (current < 0) {
      for (const [i, j] of [
        [a, b],
        [b, a],
      ]) {
        add(matrix, i, i, branch.siemens);
        add(matrix, i, j, -branch.siemens);
      }
      add(given, a, 0, branch.amps);
      add(given, b, 0, -branch.amps);
      continue;
    }
    // Va - Vb - i/g = amps/g, and i leaves a for b.
    const k = count + current;
    for (const [node, sign] of [
      [a, 1],
      [b, -1],
    ]) {
      add(matrix, k, node, sign);
      add(matrix, node, k, sign);
    }
    matrix.set(k, k, -1 / branch.siemens);
    given.set(k, 0, branch.amps / branch.siemens);
  }
  const solution = new LuDecomposition(matrix).solve(given);
  return row.map((r) => (r === REFERENCE ? null : solution.get(r, 0)));
}

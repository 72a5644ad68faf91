/**
 * Node volts without any rounding: conductances and currents are binary fractions, so whole numbers solve them exactly
 * (Bareiss' fraction-free elimination, 1968). Slow, and right to the last bit; for networks of a few nodes.
 */
import { LEAK_SIEMENS, type Network, REFERENCE } from '../../src/circuit/index.ts';

/** Powers of two by which every number is made whole: 2^-140 and its 52 bits of fraction. */
const SHIFT = 200n;

/** A double as a whole number of 2^-200. */
function whole(x: number): bigint {
  let exponent = 0;
  let m = x;
  while (!Number.isInteger(m)) {
    m *= 2;
    exponent++;
  }
  if (BigInt(exponent) > SHIFT) throw new RangeError(`too small for exact arithmetic: ${x}`);
  return BigInt(m) << (SHIFT - BigInt(exponent));
}

/** Quotient of two whole numbers as the nearest double (to about 1 bit). */
function quotient(top: bigint, bottom: bigint): number {
  if (top === 0n) return 0;
  const negative = top < 0n !== bottom < 0n;
  const [t, b] = [top < 0n ? -top : top, bottom < 0n ? -bottom : bottom];
  const shift = 64 - (t.toString(2).length - b.toString(2).length);
  const scaled = shift >= 0 ? (t << BigInt(shift)) / b : t / (b << BigInt(-shift));
  const value = Number(scaled) * 2 ** -shift;
  return negative ? -value : value;
}

export function exactVolts(network: Network): number[] {
  const { plan, siemens, norton } = network;
  const n = plan.nodeCount;
  const rows = Array.from({ length: n }, () => new Array<bigint>(n + 1).fill(0n));
  for (let i = 0; i < n; i++) rows[i][i] = whole(LEAK_SIEMENS);
  const stamp = (a: number, b: number, g: bigint) => {
    if (a !== REFERENCE) rows[a][a] += g;
    if (b !== REFERENCE) rows[b][b] += g;
    if (a === REFERENCE || b === REFERENCE) return;
    rows[a][b] -= g;
    rows[b][a] -= g;
  };
  for (let e = 0; e < plan.edgeCount; e++) {
    const [a, b] = [plan.edgeA[e], plan.edgeB[e]];
    stamp(a, b, whole(siemens[e]));
    const amps = whole(norton[e]);
    if (a !== REFERENCE) rows[a][n] += amps;
    if (b !== REFERENCE) rows[b][n] -= amps;
  }
  for (const bridge of network.bridges) stamp(bridge.a, bridge.b, whole(bridge.siemens));
  return eliminate(rows);
}

/** Gauss-Jordan without fractions: afterwards every diagonal holds the determinant. */
function eliminate(rows: bigint[][]): number[] {
  const n = rows.length;
  let previous = 1n;
  for (let k = 0; k < n; k++) {
    const pivot = rows[k][k];
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const factor = rows[i][k];
      for (let j = 0; j <= n; j++) rows[i][j] = (rows[i][j] * pivot - rows[k][j] * factor) / previous;
    }
    previous = pivot;
  }
  return rows.map((row, i) => quotient(row[n], row[i]));
}

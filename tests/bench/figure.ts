/** One measured figure, beside the same work done by a peer. Printed as one line of JSON. */
export interface Figure {
  name: string;
  value: number;
  unit: string;
  /** What it is compared with, and its figure in the same unit. */
  peer: string | null;
  peerValue: number | null;
  /** Ours by the peer's: below 1 is less. */
  ratio: number | null;
  /** How many times it was measured; the median counts. */
  count: number;
}

export function figure(
  name: string,
  value: number,
  unit: string,
  count: number,
  peer?: { name: string; value: number },
): Figure {
  const rounded = (x: number) => Number(x.toPrecision(4));
  return {
    name,
    value: rounded(value),
    unit,
    peer: peer?.name ?? null,
    peerValue: peer === undefined ? null : rounded(peer.value),
    ratio: peer === undefined ? null : rounded(value / peer.value),
    count,
  };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return sorted.length % 2 === 1 ? sorted[Math.floor(middle)] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** Two solutions of one network may differ by rounding: a thousandth of a millionth, and of a volt. */
export const nearly = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 + 1e-9 * Math.abs(b);

/** Milliseconds of each of `count` runs, after `warm` runs that don't count. */
export async function timed(run: () => void | Promise<void>, count: number, warm: number): Promise<number[]> {
  for (let i = 0; i < warm; i++) await run();
  const times: number[] = [];
  for (let i = 0; i < count; i++) {
    const begin = performance.now();
    await run();
    times.push(performance.now() - begin);
  }
  return times;
}

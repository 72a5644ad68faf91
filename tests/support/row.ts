/** A published value against the model: a test that says where the number is from and how far that source can be trusted. */
import { expect, it } from 'vitest';

/** C read in the source, C2 read in a text that quotes it, M from memory of it, D worked out from other rows. */
export type Status = 'C' | 'C2' | 'M' | 'D';

/** A bound that is missing is open. */
export interface Band {
  least?: number;
  most?: number;
}

export function row(status: Status, source: string, what: string, check: () => void): void {
  it(`${what} [${status}: ${source}]`, check);
}

export function within(value: number, { least, most }: Band, what = ''): void {
  expect(Number.isFinite(value), `${what} is a number`).toBe(true);
  if (least !== undefined) expect(value, what).toBeGreaterThanOrEqual(least);
  if (most !== undefined) expect(value, what).toBeLessThanOrEqual(most);
}

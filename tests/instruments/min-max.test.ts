/** Minimum and maximum: what stands for the stated time is kept, what is shorter is averaged (common practice, no source). */
import { describe, expect, it } from 'vitest';
import { CAPTURE_MS, MinMax } from '../../src/instruments/index.ts';

/** Volts from each moment on, ms; the last one is where the record ends. */
function kept(...points: [timeMs: number, volts: number][]): [number | null, number | null] {
  const record = new MinMax();
  for (const [timeMs, volts] of points) record.take(timeMs, volts);
  return [record.least, record.most];
}

describe('minimum and maximum', () => {
  it('states 100 ms, as usual hand meters do', () => {
    expect(CAPTURE_MS).toBe(100);
  });

  it('have nothing to show before that time is over', () => {
    expect(kept([0, 12.6], [99, 12.6])).toEqual([null, null]);
    expect(kept([0, 12.6], [100, 12.6])).toEqual([12.6, 12.6]);
  });

  it.each([200, 450, 5000, 90 * 60_000])('catch a dip that lasts for %d ms wherever it begins', (ms) => {
    for (const from of [1000, 1033, 1099]) {
      const [least, most] = kept([0, 12.6], [from, 9.5], [from + ms, 12.6], [from + ms + 1000, 12.6]);
      expect(least).toBeCloseTo(9.5, 9);
      expect(most).toBeCloseTo(12.6, 9);
    }
  });

  it('show of a dip of 8 ms only its share of the stretch: 4 V of 12 for 8 of 100 ms is 11.36 (arithmetic)', () => {
    expect(kept([0, 12], [1040, 4], [1048, 12], [3000, 12])[0]).toBeCloseTo((92 * 12 + 8 * 4) / 100, 9);
  });

  it('never lie outside what was there', () => {
    const points: [number, number][] = Array.from({ length: 400 }, (_, i) => [i * 17, ((i * 7919) % 251) / 20]);
    const [least, most] = kept(...points);
    const volts = points.map(([, v]) => v);
    expect(least).toBeGreaterThanOrEqual(Math.min(...volts));
    expect(most).toBeLessThanOrEqual(Math.max(...volts));
    expect(least).toBeLessThan(most ?? 0);
  });
});

/** The meter's memory of the least and the greatest that it has shown. */

/** What is shorter than this is averaged away, ms: usual in hand meters (common practice, no source). */
export const CAPTURE_MS = 100;

export class MinMax {
  least: number | null = null;
  most: number | null = null;
  private last: { timeMs: number; value: number } | null = null;
  /** The stretch that is being averaged: how long it is already, ms, and value times ms. */
  private ms = 0;
  private sum = 0;

  /** A value stands from its time until the next one's. */
  take(timeMs: number, value: number): void {
    if (this.last !== null) this.stood(timeMs - this.last.timeMs, this.last.value);
    this.last = { timeMs, value };
  }

  private stood(ms: number, value: number): void {
    const first = Math.min(ms, CAPTURE_MS - this.ms);
    this.add(first, value);
    const whole = Math.floor((ms - first) / CAPTURE_MS);
    // However many full stretches of one value there are, they tell the same.
    if (whole > 0) this.add(CAPTURE_MS, value);
    this.add(ms - first - whole * CAPTURE_MS, value);
  }

  private add(ms: number, value: number): void {
    this.ms += ms;
    this.sum += ms * value;
    if (this.ms < CAPTURE_MS) return;
    const mean = this.sum / this.ms;
    this.least = Math.min(this.least ?? mean, mean);
    this.most = Math.max(this.most ?? mean, mean);
    this.ms = 0;
    this.sum = 0;
  }
}

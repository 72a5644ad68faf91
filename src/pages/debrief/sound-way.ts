/** The job's own sound way, worked through like any attempt: what it costs. */
import type { Attempt } from '../../job/index.ts';

export interface Work {
  verb: string;
  target: string;
  tenths: number;
  price: number;
}

export interface SoundBill {
  tenths: number;
  price: number;
  work: Work[];
  /** What went into the meter's own fuses, in the book's money. */
  meterFuses: number;
}

export function workOf(attempt: Attempt): Work[] {
  return attempt.records.flatMap(({ entry, cost }) =>
    entry.action.do === 'repair' ? [{ verb: entry.action.verb, target: entry.action.target, ...cost }] : [],
  );
}

export const billOfWay = (attempt: Attempt): SoundBill => ({
  tenths: attempt.tenths,
  price: attempt.price,
  work: workOf(attempt),
  meterFuses: attempt.records.reduce(
    (sum, { entry, cost }) => (entry.action.do === 'renewFuse' ? sum + cost.price : sum),
    0,
  ),
});

/** Where the student stands and what hands have done: the same for the real machine and for every suspect's. */

import type { MeterFunction } from '../instruments/index.ts';
import type { Book } from '../machine/index.ts';
import type { Instrument } from './action.ts';

export interface Bench {
  zone: string;
  opened: string[];
  /** Precautions that the student has set and that still stand. */
  precautions: string[];
  /** Simulated time until which the called helper stays, ms; null when nobody is there. */
  helperUntilMs: number | null;
  unplugged: string[];
  /** Wire ends off their studs or terminals: `208A@to`. */
  lifted: string[];
  pulled: string[];
  exchanged: [string, string][];
  instrument: Instrument;
  dial: MeterFunction;
  /** What the meter's buttons are at; turning its dial lets all of them go. */
  range: number | null;
  zero: number | null;
  minMax: boolean;
  redJack: 'volts' | 'amps';
  jackFuseBlown: boolean;
  leads: { red: string | null; black: string | null };
  /** What the student asserts is suspect. */
  marked: string[];
}

export function firstBench(book: Book): Bench {
  return {
    zone: book.zones[0].id,
    opened: [],
    precautions: [],
    helperUntilMs: null,
    unplugged: [],
    lifted: [],
    pulled: [],
    exchanged: [],
    instrument: 'meter',
    dial: 'off',
    range: null,
    zero: null,
    minMax: false,
    redJack: 'volts',
    jackFuseBlown: false,
    leads: { red: null, black: null },
    marked: [],
  };
}

export const without = <T>(list: readonly T[], item: T): T[] => list.filter((x) => x !== item);
export const withOne = <T>(list: readonly T[], item: T): T[] => (list.includes(item) ? [...list] : [...list, item]);

/** The exchange that would be undone by exchanging these two again: neither has moved on since. */
export function exchangedWith(bench: Bench, one: string, other: string): [string, string] | undefined {
  const last = bench.exchanged.findLast((pair) => pair.includes(one) || pair.includes(other));
  return last?.includes(one) && last.includes(other) ? last : undefined;
}

/** Does the meter send its test current through the leads? */
export const measuresOhms = ({ instrument, dial, redJack, leads }: Bench): boolean =>
  instrument === 'meter' &&
  redJack === 'volts' &&
  (dial === 'ohms' || dial === 'continuity' || dial === 'diode') &&
  leads.red !== null &&
  leads.black !== null;

/** Is this zone in the cab, where one can sit down and reach the operator's controls? */
export const inCab = (book: Book, zone: string): boolean => book.cab.includes(zone);

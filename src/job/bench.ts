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
    redJack: 'volts',
    jackFuseBlown: false,
    leads: { red: null, black: null },
    marked: [],
  };
}

export const without = <T>(list: readonly T[], item: T): T[] => list.filter((x) => x !== item);
export const withOne = <T>(list: readonly T[], item: T): T[] => (list.includes(item) ? [...list] : [...list, item]);

/** Is this zone in the cab, where one can sit down and reach the operator's controls? */
export const inCab = (book: Book, zone: string): boolean => book.cab.includes(zone);

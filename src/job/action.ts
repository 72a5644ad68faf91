/** What a student can do. Each is an entry in the log; its arguments name points, parts and controls of the book. */
import type { MeterFunction } from '../instruments/index.ts';

export type Instrument = 'meter' | 'lamp';
export type Lead = 'red' | 'black';

/** Ways to end an attempt; all but `repaired` are honest endings without a repair. */
export type Ending = 'repaired' | 'no-fault' | 'cannot-duplicate' | 'not-safe' | 'handed-on';

export type Action =
  | { do: 'start' }
  | { do: 'ask'; question: string }
  | { do: 'walk'; zone: string }
  | { do: 'open'; access: string }
  | { do: 'close'; access: string }
  | { do: 'precaution'; id: string; on: boolean }
  | { do: 'helper'; call: boolean }
  /** Moves a control; a momentary one springs back after `holdMs`. */
  | { do: 'operate'; control: string; value: string; holdMs?: number }
  | { do: 'instrument'; take: Instrument }
  | { do: 'dial'; fn: MeterFunction }
  | { do: 'jack'; red: 'volts' | 'amps' }
  /** Keeps the meter in a range of its function, by its place in `rangesOf`; null lets it choose again. */
  | { do: 'range'; to: number | null }
  /** Reads, and takes what it reads off everything that comes after; off again reads without. */
  | { do: 'zero'; on: boolean }
  /** Keeps the least and the greatest that the meter shows. */
  | { do: 'minmax'; on: boolean }
  /** A new fuse for the meter's own current jack. */
  | { do: 'renewFuse' }
  | { do: 'lead'; lead: Lead; point: string | null }
  | { do: 'read' }
  | { do: 'look'; at: string }
  | { do: 'wiggle'; at: string }
  | { do: 'codes' }
  | { do: 'clearCodes' }
  | { do: 'unplug'; connector: string }
  | { do: 'plug'; connector: string }
  | { do: 'lift'; end: string }
  | { do: 'land'; end: string }
  | { do: 'pull'; part: string }
  | { do: 'refit'; part: string }
  /** Two like relays change places, as a test; done again they are back. */
  | { do: 'exchange'; part: string; with: string }
  | { do: 'repair'; verb: string; target: string }
  | { do: 'mark'; target: string; suspect: boolean }
  | { do: 'note'; text: string }
  | { do: 'verify' }
  | { do: 'writeUp'; complaint: string; cause: string; mode: string; correction: string }
  | { do: 'finish'; ending: Ending };

export type ActionKind = Action['do'];

/** Why an action could not be done. Nothing happened and nothing was spent. Codes, never sentences. */
export interface Refusal {
  code:
    | 'not-here'
    | 'covered'
    | 'out-of-reach'
    | 'needs-helper'
    | 'not-probeable'
    | 'must-be-parted'
    | 'not-in-socket'
    | 'already'
    | 'unknown'
    | 'ended'
    | 'not-started'
    | 'wrong-repair'
    | 'not-alike'
    | 'seat-up'
    | 'untrue'
    | 'nobody-there'
    | 'in-the-way';
  /** What is in the way, where the thing is, or what would have to stand first: an id of the book. */
  what: string;
}

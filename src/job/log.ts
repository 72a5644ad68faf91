/** The log, version 1: every action with its time, cost and what was seen, each entry chained to the one before. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Action } from './action.ts';
import { canonical } from './canonical.ts';
import type { Display } from './rig.ts';

export const LOG_VERSION = 1;
/** Changes whenever the same log could give other readings or another grade. */
export const ENGINE_VERSION = '0.3.0';

export interface LogHeader {
  version: typeof LOG_VERSION;
  engine: string;
  /** Hashes of the book and of the job, as canonical JSON. */
  book: string;
  job: string;
  jobId: string;
  seed: number;
}

export interface LogEntry {
  index: number;
  /** Time of the job when the action was done, whole milliseconds. */
  timeMs: number;
  /** Tenths of a shop minute that it cost, and price units. */
  tenths: number;
  price: number;
  action: Action;
  seen: { display?: Display; codes: string[] };
  previous: string;
  hash: string;
}

export interface Log {
  header: LogHeader;
  entries: LogEntry[];
}

export const hashOf = (value: unknown): string => bytesToHex(sha256(utf8ToBytes(canonical(value))));

/** The chain starts from the header. */
export function appendEntry(log: Log, entry: Omit<LogEntry, 'index' | 'previous' | 'hash'>): LogEntry {
  const last = log.entries[log.entries.length - 1];
  const open = { index: log.entries.length, ...entry, previous: last?.hash ?? hashOf(log.header) };
  const whole = { ...open, hash: hashOf(open) };
  log.entries.push(whole);
  return whole;
}

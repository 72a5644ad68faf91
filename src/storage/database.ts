/** The one database of this browser. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Grade } from '../grading/index.ts';
import type { LogEntry, LogHeader } from '../job/index.ts';

export interface StoredAttempt {
  id: string;
  jobId: string;
  header: LogHeader;
  /** Wall time at which it was taken; it grades nothing. */
  takenAt: string;
  tenths: number;
  ended: boolean;
  /** Taken up in the middle of another attempt, to try: never marked. */
  practice: boolean;
  /** Wall time at which it was closed. */
  closedAt?: string;
  /** What the debrief came to, so that the board need not work it out again. */
  result?: StoredResult;
  /** The write-up as far as it is written; it counts once it is an action. */
  draft?: Draft;
}

export interface Draft {
  complaint: string;
  /** Part, wire or pin; empty for no fault; null while none is chosen. */
  cause: string | null;
  mode: string;
  correction: string;
}

export interface StoredResult {
  result: Grade['result'];
  /** Of 100. */
  points: number;
}

export interface Schema extends DBSchema {
  attempts: { key: string; value: StoredAttempt };
  entries: { key: [string, number]; value: LogEntry & { attempt: string } };
  grades: { key: string; value: { key: string; grade: Grade } };
}

const VERSION = 1;
let opened: Promise<IDBPDatabase<Schema>> | null = null;

export function openOhmyard(): Promise<IDBPDatabase<Schema>> {
  opened ??= openDB<Schema>('ohmyard', VERSION, {
    upgrade(fresh) {
      fresh.createObjectStore('attempts', { keyPath: 'id' });
      fresh.createObjectStore('entries', { keyPath: ['attempt', 'index'] });
      fresh.createObjectStore('grades', { keyPath: 'key' });
    },
  });
  return opened;
}

/** Attempts kept in this browser: one header record each, and their log entries, only ever appended. */
import type { IDBPDatabase } from 'idb';
import type { Log, LogEntry } from '../job/index.ts';
import { openOhmyard, type Schema, type StoredAttempt } from './database.ts';

export type { Draft, StoredAttempt, StoredResult } from './database.ts';

export interface AttemptStore {
  /** False where the browser keeps nothing, so that the screen can say so. */
  readonly lasting: boolean;
  list(): Promise<StoredAttempt[]>;
  begin(attempt: StoredAttempt): Promise<void>;
  append(attempt: StoredAttempt, entry: LogEntry): Promise<void>;
  /** Keeps what belongs to an attempt beside its log; of one that is not kept here, nothing. */
  change(id: string, part: Pick<StoredAttempt, 'result' | 'draft'>): Promise<void>;
  load(id: string): Promise<Log | null>;
  remove(id: string): Promise<void>;
}

export async function openAttempts(): Promise<AttemptStore> {
  try {
    return inDatabase(await openOhmyard());
  } catch {
    return inMemory();
  }
}

function inDatabase(db: IDBPDatabase<Schema>): AttemptStore {
  const entriesOf = (id: string) => IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);
  return {
    lasting: true,
    list: () => db.getAll('attempts'),
    begin: async (attempt) => {
      await db.put('attempts', attempt);
    },
    append: async (attempt, entry) => {
      const work = db.transaction(['attempts', 'entries'], 'readwrite');
      // `add`, never `put`: a second window on the same attempt must not write over the first one's entries.
      await Promise.all([
        work.objectStore('entries').add({ ...entry, attempt: attempt.id }),
        work.objectStore('attempts').put(attempt),
        work.done,
      ]);
    },
    change: async (id, part) => {
      const work = db.transaction('attempts', 'readwrite');
      const attempt = await work.store.get(id);
      if (attempt !== undefined) await work.store.put({ ...attempt, ...part });
      await work.done;
    },
    load: async (id) => {
      const attempt = await db.get('attempts', id);
      if (attempt === undefined) return null;
      const rows = await db.getAll('entries', entriesOf(id));
      return { header: attempt.header, entries: rows.map(({ attempt: _, ...entry }) => entry) };
    },
    remove: async (id) => {
      const work = db.transaction(['attempts', 'entries'], 'readwrite');
      await Promise.all([
        work.objectStore('attempts').delete(id),
        work.objectStore('entries').delete(entriesOf(id)),
        work.done,
      ]);
    },
  };
}

/** Where the browser denies its storage the work goes on until the window is closed. */
function inMemory(): AttemptStore {
  const attempts = new Map<string, StoredAttempt>();
  const entries = new Map<string, LogEntry[]>();
  return {
    lasting: false,
    list: async () => [...attempts.values()],
    begin: async (attempt) => {
      attempts.set(attempt.id, attempt);
    },
    append: async (attempt, entry) => {
      attempts.set(attempt.id, attempt);
      entries.set(attempt.id, [...(entries.get(attempt.id) ?? []), entry]);
    },
    change: async (id, part) => {
      const attempt = attempts.get(id);
      if (attempt !== undefined) attempts.set(id, { ...attempt, ...part });
    },
    load: async (id) => {
      const attempt = attempts.get(id);
      return attempt === undefined ? null : { header: attempt.header, entries: entries.get(id) ?? [] };
    },
    remove: async (id) => {
      attempts.delete(id);
      entries.delete(id);
    },
  };
}

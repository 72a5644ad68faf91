/** The attempts of this browser, and which one is open. */
import { Attempt, type JobSpec } from '../../job/index.ts';
import { type AttemptStore, openAttempts, type StoredAttempt } from '../../storage/attempts.ts';
import { catalog, jobById } from './catalog.ts';
import { Observable } from './observable.ts';
import { Session } from './session.ts';

export interface Shelf {
  ready: boolean;
  lasting: boolean;
  attempts: StoredAttempt[];
  open: Session | null;
  /** A kept attempt did not replay as it was recorded: the book or the engine is another. */
  differs: boolean;
}

export const shelf = new Observable<Shelf>({ ready: false, lasting: true, attempts: [], open: null, differs: false });

let opened: Promise<AttemptStore> | null = null;
const attempts = (): Promise<AttemptStore> => {
  opened ??= openAttempts();
  return opened;
};

export async function refreshShelf(): Promise<void> {
  const store = await attempts();
  shelf.update({ ready: true, lasting: store.lasting, attempts: await store.list() });
}

/** A new attempt at a job. */
export async function takeJob(job: JobSpec): Promise<Session> {
  const session = await begin(job, false);
  session.act({ do: 'start' });
  return session;
}

/** The first `count` steps of an attempt, to go on from there another way. */
export async function tryFrom({ job, attempt }: Session, count: number): Promise<Session> {
  const actions = attempt.log.entries.slice(0, count).map((entry) => entry.action);
  const session = await begin(job, true);
  session.follow(actions);
  return session;
}

async function begin(job: JobSpec, practice: boolean): Promise<Session> {
  const store = await attempts();
  const { model } = catalog();
  const attempt = new Attempt(model, job);
  const stored: StoredAttempt = {
    id: newId(),
    jobId: job.id,
    header: attempt.log.header,
    takenAt: new Date().toISOString(),
    tenths: 0,
    ended: false,
    practice,
  };
  await store.begin({ ...stored });
  const session = new Session(model, job, stored, store, attempt);
  shelf.update({ open: session, differs: false });
  return session;
}

/** Also where the page does not come over a secure line, as on a shop's own server. */
const newId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

export async function openAttempt(id: string): Promise<Session | null> {
  const now = shelf.value.open;
  if (now?.stored.id === id) return now;
  const store = await attempts();
  const stored = (await store.list()).find((a) => a.id === id);
  const log = await store.load(id);
  const job = stored === undefined ? undefined : jobById(stored.jobId);
  if (stored === undefined || log === null || job === undefined) return null;
  const { session, differs } = Session.resume(catalog().model, job, stored, log, store);
  shelf.update({ open: session, differs });
  return session;
}

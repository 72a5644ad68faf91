/** The attempt on the screen: sends actions, keeps what was seen, saves each entry as it is made. */
import { type Action, Attempt, isRefusal, type JobSpec, type Log, type Record, type Refusal } from '../../job/index.ts';
import type { Model } from '../../machine/index.ts';
import type { AttemptStore, Draft, StoredAttempt, StoredResult } from '../../storage/attempts.ts';
import { Observable } from './observable.ts';
import { canRead } from './reading.ts';
import { settings } from './settings.ts';

/** What the last thing done came to, for the slip under the stage. */
export type Outcome =
  | { kind: 'refused'; action: Action; refusal: Refusal }
  | { kind: 'done'; records: Record[] }
  | { kind: 'none' };

export interface View {
  /** Counts what was done, so that screens are drawn again. */
  version: number;
  outcome: Outcome;
  saved: boolean;
}

export type Listener = (record: Record) => void;

export class Session {
  readonly view = new Observable<View>({ version: 0, outcome: { kind: 'none' }, saved: true });
  readonly attempt: Attempt;
  private readonly listeners = new Set<Listener>();

  constructor(
    readonly model: Model,
    readonly job: JobSpec,
    readonly stored: StoredAttempt,
    private readonly store: AttemptStore | null,
    attempt: Attempt = new Attempt(model, job),
  ) {
    this.attempt = attempt;
    attempt.rig.goLive();
  }

  /** A stored attempt, gone through again to where it was left. */
  static resume(
    model: Model,
    job: JobSpec,
    stored: StoredAttempt,
    log: Log,
    store: AttemptStore,
  ): { session: Session; differs: boolean } {
    const attempt = new Attempt(model, job, log.header.seed);
    let differs = false;
    for (const entry of log.entries) {
      const result = attempt.act(entry.action);
      if (isRefusal(result)) {
        differs = true;
        break;
      }
      differs ||= result.entry.hash !== entry.hash;
    }
    return { session: new Session(model, job, stored, store, attempt), differs };
  }

  /** A copy that is only looked at: nothing of it is kept. */
  static toLookAt(model: Model, job: JobSpec, stored: StoredAttempt, attempt: Attempt): Session {
    return new Session(model, job, { ...stored }, null, attempt);
  }

  get bench() {
    return this.attempt.bench;
  }

  get book() {
    return this.model.book;
  }

  /** Does an action; where that completes a measurement the meter is read as well. */
  act(action: Action): Record | Refusal {
    const result = this.attempt.act(action);
    if (isRefusal(result)) {
      this.publish({ kind: 'refused', action, refusal: result });
      return result;
    }
    const records = [result];
    this.keep(result);
    if (settings.value.autoRead && completes(action) && canRead(this.attempt)) {
      const reading = this.attempt.act({ do: 'read' });
      if (!isRefusal(reading)) {
        records.push(reading);
        this.keep(reading);
      }
    }
    this.publish({ kind: 'done', records });
    for (const record of records) for (const listener of this.listeners) listener(record);
    return result;
  }

  /** Actions of another attempt, as they were recorded; stops where one is refused. */
  follow(actions: readonly Action[]): void {
    for (const action of actions) {
      const result = this.attempt.act(action);
      if (isRefusal(result)) break;
      this.keep(result);
    }
    this.publish({ kind: 'none' });
  }

  onRecord(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Says what is in the way, where nothing was tried. */
  refuse(action: Action, refusal: Refusal): void {
    this.publish({ kind: 'refused', action, refusal });
  }

  clearOutcome(): void {
    if (this.view.value.outcome.kind !== 'none') this.publish({ kind: 'none' });
  }

  /** The result as the board shows it, kept beside the attempt. */
  async keepResult(result: StoredResult): Promise<void> {
    if (this.stored.practice) return;
    this.stored.result = result;
    await this.store?.change(this.stored.id, { result });
  }

  /** What stands in the write-up before it is saved; a window that is closed loses none of it. */
  keepDraft(draft: Draft): void {
    this.stored.draft = draft;
    this.store?.change(this.stored.id, { draft }).catch(() => this.view.update({ saved: false }));
  }

  private publish(outcome: Outcome): void {
    this.view.update({ version: this.view.value.version + 1, outcome });
  }

  private keep(record: Record): void {
    this.stored.tenths = this.attempt.tenths;
    this.stored.ended = this.attempt.phase === 'ended';
    if (this.stored.ended) this.stored.closedAt ??= new Date().toISOString();
    this.store?.append({ ...this.stored }, record.entry).catch(() => this.view.update({ saved: false }));
  }
}

/** Leads, dial, jack and what the display is to show complete a measurement; after anything else the student reads when ready. */
const completes = (action: Action): boolean =>
  (action.do === 'lead' && action.point !== null) || ['dial', 'jack', 'range', 'minmax'].includes(action.do);

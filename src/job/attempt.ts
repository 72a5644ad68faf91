/** One attempt at a job: a fold over its actions. Whoever holds the log gets the same readings from it again. */
import { once } from '../circuit/index.ts';
import { JACK_FUSE_AMPS, SHUNT_OHMS } from '../instruments/index.ts';
import type { Model } from '../machine/index.ts';
import type { Action, Refusal } from './action.ts';
import { type Bench, firstBench, inCab, without } from './bench.ts';
import { type Cost, costOf, unattendedMinutes } from './cost.ts';
import { type Effect, effectOf, helperIsThere } from './effect.ts';
import { appendEntry, ENGINE_VERSION, hashOf, LOG_VERSION, type Log, type LogEntry } from './log.ts';
import { noticed } from './observables.ts';
import { nextPhase, type Phase } from './phase.ts';
import { Rig, type Seen, type Step, shunts } from './rig.ts';
import { heldByHelper, type Lapse, lapsesAt, lapsing, untrue } from './safety.ts';
import type { JobSpec } from './spec.ts';
import { seatSteps } from './steps.ts';
import { failingInterlocks, lacking, operatorZone, shows } from './trial.ts';

const MS_PER_TENTH = 6000;
const MS_PER_MINUTE = 60_000;

/** Everything about one action that grading and the debrief need. */
export interface Record {
  entry: LogEntry;
  before: Bench;
  after: Bench;
  steps: Step[];
  seen: Seen;
  lapses: Lapse[];
  cost: Cost;
  /** Of what was seen and heard, what is still so when it is done: codes of the book's observables. */
  lasting: string[];
  /** The target for which something found on the spot speaks. */
  signOf?: string;
}

export class Attempt {
  readonly model: Model;
  readonly job: JobSpec;
  readonly rig: Rig;
  readonly log: Log;
  readonly records: Record[] = [];
  bench: Bench;
  phase: Phase = 'briefed';
  timeMs = 0;
  tenths = 0;
  price = 0;

  constructor(model: Model, job: JobSpec, seed = 0) {
    this.model = model;
    this.job = job;
    this.rig = Rig.arriving(model, job.faults, job.arrival);
    this.bench = { ...firstBench(model.book), zone: operatorZone(model.book) };
    const header = {
      version: LOG_VERSION,
      engine: ENGINE_VERSION,
      book: bookHash(model),
      job: hashOf(job),
      jobId: job.id,
      seed,
    } as const;
    this.log = { header, entries: [] };
  }

  /** Would this action be refused now? */
  refusal(action: Action): Refusal | null {
    const phase = nextPhase(this.phase, action);
    if (phase === null) return { code: this.phase === 'ended' ? 'ended' : 'not-started', what: action.do };
    const outcome = this.outcome(action);
    return 'refused' in outcome ? outcome.refused : null;
  }

  /** Does an action, or says why it can't be done; then nothing has happened. */
  act(action: Action): Record | Refusal {
    const phase = nextPhase(this.phase, action);
    if (phase === null) return { code: this.phase === 'ended' ? 'ended' : 'not-started', what: action.do };
    const outcome = this.outcome(action);
    if ('refused' in outcome) return outcome.refused;
    this.phase = phase;
    return this.carryOut(action, outcome.effect);
  }

  private outcome(action: Action) {
    return effectOf(
      {
        model: this.model,
        job: this.job,
        bench: this.bench,
        timeMs: this.timeMs,
        controlOf: (id) => this.rig.world.controlOf(id),
        world: this.rig.world,
      },
      action,
    );
  }

  private carryOut(action: Action, effect: Effect): Record {
    const before = this.bench;
    const cost = costOf(this.model.book, before, action);
    const { world } = this.rig;
    const lapses = effect.events.flatMap((moment) => (moment.after ? [] : lapsesAt(world, before, moment)));
    const worked = cost.tenths * MS_PER_TENTH + unattendedMinutes(this.model.book, action) * MS_PER_MINUTE;
    const after = this.settleBench(effect, this.timeMs + worked);
    // A helper whose time runs out finishes what is being done, then leaves.
    const steps: Step[] = [{ pass: worked }, ...effect.steps, ...this.lateHelper(before, after, worked)];
    const seen = this.rig.run(steps);
    const extra = this.consequences(action);
    seen.codes = [...seen.codes, ...extra].sort();
    this.timeMs = this.rig.world.state.timeMs;
    this.tenths += cost.tenths;
    this.price += cost.price;
    const blown = this.burnJackFuse(after, seen);
    if (blown !== null) steps.push({ hands: blown });
    this.bench = this.withoutUntrue(blown ?? after);
    lapses.push(...effect.events.flatMap((moment) => (moment.after ? lapsesAt(world, this.bench, moment) : [])));
    const shown = seen.display === undefined ? { codes: seen.codes } : { display: seen.display, codes: seen.codes };
    const entry = appendEntry(this.log, {
      timeMs: this.timeMs,
      tenths: cost.tenths,
      price: cost.price,
      action,
      seen: shown,
    });
    const lasting = seen.codes.length === 0 ? [] : noticed(this.rig.world, this.bench.zone);
    const record: Record = { entry, before, after: this.bench, steps, seen, lapses, cost, lasting };
    const sign = seen.codes.find((code) => code.startsWith('sign:'));
    const speaksFor = sign === undefined ? undefined : this.job.signs[Number(sign.slice(5))]?.of;
    if (speaksFor !== undefined) record.signOf = speaksFor;
    this.records.push(record);
    return record;
  }

  /** Precautions that the action's events take away, and a helper whose time has run out. */
  private settleBench(effect: Effect, timeMs: number): Bench {
    const { helperUntilMs } = effect.bench;
    const stays = helperUntilMs !== null && timeMs < helperUntilMs;
    const { book } = this.model;
    // Whoever leaves because the time is up lets go of what only a helper holds, and touches nothing else.
    const gone = [
      ...effect.events.flatMap(({ event }) => lapsing(book, effect.bench, event)),
      ...(helperUntilMs !== null && !stays ? heldByHelper(book) : []),
    ];
    const precautions = gone.reduce((list, id) => without(list, id), effect.bench.precautions);
    return { ...effect.bench, precautions, helperUntilMs: stays ? helperUntilMs : null };
  }

  /** What was true when it was set, and is not any more: a key that is out no longer, once it is turned. */
  private withoutUntrue(bench: Bench): Bench {
    const gone = untrue(this.rig.world, bench);
    return gone.length === 0 ? bench : { ...bench, precautions: bench.precautions.filter((id) => !gone.includes(id)) };
  }

  /** When the helper leaves, the seat is empty again unless the student sits in it. */
  private lateHelper(before: Bench, after: Bench, worked: number): Step[] {
    const left = helperIsThere(before, this.timeMs) && !helperIsThere(after, this.timeMs + worked);
    return left && !inCab(this.model.book, after.zone) ? seatSteps(this.model.book, after, false) : [];
  }

  /** What only the real machine can tell: signs of the fault, answers, the outcome of the proof. */
  private consequences(action: Action): string[] {
    switch (action.do) {
      case 'look':
      case 'wiggle':
        return this.signs(action.do, action.at);
      case 'ask':
        return this.job.asks.some((a) => a.id === action.question) ? [`answer:${action.question}`] : [];
      case 'verify':
        return this.proof();
      default:
        return [];
    }
  }

  private signs(by: 'look' | 'wiggle', at: string): string[] {
    const { opened, unplugged, pulled, zone } = this.bench;
    const present = new Set([...this.rig.faults.map((f) => f.at), ...this.leftAsFound()]);
    return this.job.signs.flatMap((sign, i) => {
      const visible = sign.by === by && sign.zone === zone && (sign.at === at || at === zone);
      const parted = sign.parted === undefined || unplugged.includes(sign.parted) || pulled.includes(sign.parted);
      const covered = sign.under !== undefined && !opened.includes(sign.under);
      return visible && parted && !covered && (sign.of === undefined || present.has(sign.of)) ? [`sign:${i}`] : [];
    });
  }

  /** Parts whose control somebody left in another position than usual, and which still stand there. */
  private leftAsFound(): string[] {
    const left = this.job.arrival.controls ?? {};
    return this.model.book.controls
      .filter(({ id }) => left[id] !== undefined && this.rig.world.controlOf(id) === left[id])
      .map(({ part }) => part);
  }

  private proof(): string[] {
    const stays = this.job.complaint.some((symptom) => shows(this.rig, symptom));
    const lacks = stays ? [] : this.job.complaint.flatMap((symptom) => lacking(this.rig, symptom));
    const failing = failingInterlocks(this.rig).map((i) => `interlock-fails:${i.id}`);
    const verdict = lacks.length > 0 ? 'complaint-other' : 'complaint-gone';
    return [
      stays ? 'complaint-stays' : verdict,
      ...lacks.map((code) => `lacks:${code}`),
      ...(failing.length > 0 ? failing : ['interlocks-hold']),
    ];
  }

  /** More than its rating through the meter's current jack, and its fuse is gone; null where it holds. */
  private burnJackFuse(bench: Bench, seen: Seen): Bench | null {
    const { red, black } = bench.leads;
    if (!shunts(bench) || red === null || black === null) return null;
    const now = this.rig.world.voltsBetween(red, black) / SHUNT_OHMS;
    if (Math.max(Math.abs(now), Math.abs(seen.jackAmps ?? 0)) <= JACK_FUSE_AMPS) return null;
    const blown = { ...bench, jackFuseBlown: true };
    this.rig.run([{ hands: blown }]);
    seen.codes = [...new Set([...seen.codes, 'jack-fuse-blown'])].sort();
    return blown;
  }
}

/** Hash of the whole book: readings can only be replayed on the same one. */
export const bookHash = once((model: Model): string => hashOf(model.book));

export const isRefusal = (result: Record | Refusal): result is Refusal => 'code' in result;

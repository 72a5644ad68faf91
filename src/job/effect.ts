/** What an action does: refused, or a new bench, steps for every machine, and the safety events that it passes. */
import { isVolts, rangesOf } from '../instruments/index.ts';
import type { Book, Model, World } from '../machine/index.ts';
import type { Action, Refusal } from './action.ts';
import { type Bench, exchangedWith, inCab, measuresOhms, withOne, without } from './bench.ts';
import { HELPER_STAYS_MS } from './cost.ts';
import { isOpen, liftableAt, ownerOf, reachPart, reachPoint } from './reach.ts';
import { isStudWork, reachTarget, repairsFor } from './repair.ts';
import { readBench, type Step } from './rig.ts';
import { contradicted, type Moment } from './safety.ts';
import type { JobSpec } from './spec.ts';
import { type ControlOf, controlSpec, operateSteps, seatSteps, trialSteps } from './steps.ts';

export interface Effect {
  bench: Bench;
  steps: Step[];
  /** Checked before the steps run, but for those that say `after`. */
  events: Moment[];
}

export interface Situation {
  model: Model;
  job: JobSpec;
  bench: Bench;
  timeMs: number;
  controlOf: ControlOf;
  world: World;
}

export type Outcome = { refused: Refusal } | { effect: Effect };

const refused = (code: Refusal['code'], what: string): Outcome => ({ refused: { code, what } });
const does = (bench: Bench, steps: Step[] = [], events: Effect['events'] = []): Outcome => ({
  effect: { bench, steps, events },
});

export const helperIsThere = (bench: Bench, timeMs: number): boolean =>
  bench.helperUntilMs !== null && timeMs < bench.helperUntilMs;

export function effectOf(at: Situation, action: Action): Outcome {
  switch (action.do) {
    case 'walk':
    case 'open':
    case 'close':
    case 'precaution':
    case 'helper':
      return moveAbout(at, action);
    case 'operate':
      return operate(at, action);
    case 'instrument':
    case 'dial':
    case 'jack':
    case 'range':
    case 'zero':
    case 'minmax':
    case 'renewFuse':
    case 'lead':
    case 'read':
      return measure(at, action);
    case 'unplug':
    case 'plug':
    case 'lift':
    case 'land':
    case 'pull':
    case 'refit':
    case 'exchange':
      return takeApart(at, action);
    case 'repair':
      return repair(at, action.verb, action.target);
    case 'verify':
      return verify(at);
    case 'look':
    case 'wiggle':
      return lookAt(at, action.at);
    default:
      return paper(at, action);
  }
}

function moveAbout(
  at: Situation,
  action: Extract<Action, { do: 'walk' | 'open' | 'close' | 'precaution' | 'helper' }>,
): Outcome {
  const { model, bench, timeMs } = at;
  const { book } = model;
  const withSeat = (next: Bench, events: Effect['events'] = []): Outcome =>
    does(next, seatSteps(book, next, helperIsThere(next, timeMs)), events);
  switch (action.do) {
    case 'walk':
      if (!book.zones.some((z) => z.id === action.zone)) return refused('unknown', action.zone);
      if (action.zone === bench.zone) return refused('already', action.zone);
      return withSeat({ ...bench, zone: action.zone, leads: bench.leads }, [{ event: 'walk' }]);
    case 'open':
    case 'close': {
      const step = book.access.find((a) => a.id === action.access);
      if (step === undefined) return refused('unknown', action.access);
      if (isOpen(book, bench, action.access) === (action.do === 'open')) return refused('already', action.access);
      if (!accessIsHere(at, action.access)) return refused('not-here', action.access);
      const opening = action.do === 'open';
      const opened = opening ? withOne(bench.opened, action.access) : without(bench.opened, action.access);
      const precautions = opening ? bench.precautions : withoutStay(book, bench, action.access);
      return withSeat({ ...bench, opened, precautions }, opening ? [{ event: 'open', access: action.access }] : []);
    }
    case 'precaution':
      return setPrecaution(at, action.id, action.on);
    case 'helper':
      return withSeat({ ...bench, helperUntilMs: action.call ? timeMs + HELPER_STAYS_MS : null }, [
        { event: 'helper-moves' },
      ]);
  }
}

/** Nothing is set that the machine itself belies, and nobody is told off to a place who isn't there. */
function setPrecaution({ model, bench, timeMs, world }: Situation, id: string, on: boolean): Outcome {
  const precaution = model.book.precautions.find((p) => p.id === id);
  if (precaution === undefined) return refused('unknown', id);
  if (!on) return does({ ...bench, precautions: without(bench.precautions, id) });
  if (precaution.needsHelper && !helperIsThere(bench, timeMs)) return refused('nobody-there', id);
  const first = contradicted(world, bench, precaution);
  return first === null ? does({ ...bench, precautions: withOne(bench.precautions, id) }) : refused('untrue', first);
}

/** What holds the seat up goes when the seat is let down. */
function withoutStay(book: Book, bench: Bench, access: string): string[] {
  const step = access === book.seat.tiltedBy ? book.access.find((a) => a.id === access) : undefined;
  return bench.precautions.filter((id) => !step?.toOpen.includes(id));
}

/** An access step is done from the zone that it opens. */
function accessIsHere(at: Situation, access: string): boolean {
  const { book } = at.model;
  const opens = [...book.parts, ...book.connectors].filter((x) => x.access === access).map((x) => x.zone);
  return opens.includes(at.bench.zone) || book.zones.some((z) => z.access === access && z.id === at.bench.zone);
}

function operate(at: Situation, action: Extract<Action, { do: 'operate' }>): Outcome {
  const { model, bench, timeMs, controlOf } = at;
  const { book } = model;
  const spec = controlSpec(book, action.control);
  if (spec === undefined || spec.surroundings || !spec.values.includes(action.value))
    return refused('unknown', action.control);
  if (controlOf(action.control) === action.value) return refused('already', action.value);
  const helper = helperIsThere(bench, timeMs);
  const cabControl = inCab(book, spec.zone);
  const here = cabControl ? inCab(book, bench.zone) : bench.zone === spec.zone;
  if (!here && !(cabControl && helper)) return refused(cabControl ? 'needs-helper' : 'not-here', spec.zone);
  const onSeat = action.control === book.seat.control && action.value === book.seat.occupied;
  if (onSeat && bench.opened.includes(book.seat.tiltedBy) && !helper) return refused('seat-up', book.seat.tiltedBy);
  const events: Effect['events'] = [];
  if (spec.starts && spec.springs?.[action.value] !== undefined) events.push({ event: 'crank' });
  if (spec.disconnects === action.value) events.push({ event: 'disconnect' });
  events.push(...ohmsOf(bench));
  return does(bench, operateSteps(book, bench, controlOf, action.control, action.value, action.holdMs), events);
}

/** Whatever shows a reading may show one of ohms; a control may have brought the circuit its supply by then. */
const ohmsOf = (bench: Bench): Moment[] => (measuresOhms(bench) ? [{ event: 'ohms', after: true }] : []);

type Handling = Extract<
  Action,
  { do: 'instrument' | 'dial' | 'jack' | 'range' | 'zero' | 'minmax' | 'renewFuse' | 'lead' | 'read' }
>;

/** Turning the dial or laying the meter away lets its buttons go: common practice, no source. */
const RELEASED = { range: null, zero: null, minMax: false } as const;

function measure(at: Situation, action: Handling): Outcome {
  const { model, bench } = at;
  const load = (next: Bench): Outcome => does(next, [{ hands: next }]);
  switch (action.do) {
    case 'instrument':
      return load({ ...bench, ...RELEASED, instrument: action.take, leads: { red: null, black: null } });
    case 'dial':
      return load({ ...bench, ...RELEASED, dial: action.fn });
    case 'jack':
      return load({ ...bench, redJack: action.red });
    case 'renewFuse':
      return bench.jackFuseBlown
        ? load({ ...bench, jackFuseBlown: false })
        : { refused: { code: 'already', what: 'meter-fuse' } };
    case 'lead': {
      if (action.point !== null) {
        const refusal = reachPoint(model, bench, action.point);
        if (refusal !== null) return { refused: refusal };
      }
      return load({ ...bench, leads: { ...bench.leads, [action.lead]: action.point } });
    }
    case 'range':
    case 'minmax':
    case 'zero':
      return press(at, action);
    case 'read':
      return unreadable(bench) ?? does(bench, [{ notice: bench.zone, bench }], ohmsOf(bench));
  }
}

function unreadable({ leads, instrument, dial }: Bench): Outcome | null {
  if (leads.red === null || leads.black === null) return refused('not-probeable', 'leads');
  return instrument === 'meter' && dial === 'off' ? refused('unknown', 'off') : null;
}

/** The buttons of the meter. */
function press({ bench, world }: Situation, action: Extract<Action, { do: 'range' | 'zero' | 'minmax' }>): Outcome {
  if (bench.instrument !== 'meter') return refused('unknown', action.do);
  if (bench.dial === 'off') return refused('unknown', 'off');
  switch (action.do) {
    case 'range':
      if (action.to !== null && rangesOf(bench.dial)[action.to] === undefined) return refused('unknown', 'range');
      if (action.to === bench.range) return refused('already', 'range');
      return does({ ...bench, range: action.to });
    case 'minmax': {
      if (action.on === bench.minMax) return refused('already', 'minmax');
      if (action.on && !isVolts(bench.dial) && bench.dial !== 'amps') return refused('unknown', 'minmax');
      const next = { ...bench, minMax: action.on };
      return does(next, [{ hands: next }]);
    }
    case 'zero': {
      if (action.on === (bench.zero !== null)) return refused('already', 'zero');
      // Overload cannot be taken off: the meter shows it, and no more happens.
      const next = { ...bench, zero: action.on ? (readBench(world, bench)?.value ?? null) : null };
      return unreadable(bench) ?? does(next, [{ notice: bench.zone, bench: next }], ohmsOf(next));
    }
  }
}

type Handwork = Extract<Action, { do: 'unplug' | 'plug' | 'lift' | 'land' | 'pull' | 'refit' | 'exchange' }>;

function takeApart(at: Situation, action: Handwork): Outcome {
  const { model, bench } = at;
  const { book } = model;
  const changed = (next: Bench, events: Effect['events'] = []): Outcome => does(next, [{ hands: next }], events);
  if (action.do === 'unplug' || action.do === 'plug') {
    const refusal = reachPart(book, bench, action.connector);
    if (refusal !== null) return { refused: refusal };
    if (bench.unplugged.includes(action.connector) === (action.do === 'unplug'))
      return refused('already', action.connector);
    const list =
      action.do === 'unplug' ? withOne(bench.unplugged, action.connector) : without(bench.unplugged, action.connector);
    const event = isStudWork(model, action.connector) ? 'stud' : 'unplug';
    return changed({ ...bench, unplugged: list }, [{ event, at: action.connector }]);
  }
  if (action.do === 'lift' || action.do === 'land') return liftOrLand(at, action);
  if (action.do === 'exchange') return exchange(at, action.part, action.with);
  const part = book.parts.find((p) => p.id === action.part);
  if (part === undefined || (part.kind !== 'fuse' && part.kind !== 'relay'))
    return refused('not-in-socket', action.part);
  const refusal = reachPart(book, bench, action.part);
  if (refusal !== null) return { refused: refusal };
  if (bench.pulled.includes(action.part) === (action.do === 'pull')) return refused('already', action.part);
  const pulled = action.do === 'pull' ? withOne(bench.pulled, action.part) : without(bench.pulled, action.part);
  return changed({ ...bench, pulled }, [{ event: isStudWork(model, action.part) ? 'stud' : 'pull', at: action.part }]);
}

function liftOrLand(at: Situation, action: Extract<Action, { do: 'lift' | 'land' }>): Outcome {
  const { model, bench } = at;
  const owner = ownerOf(model, action.end);
  if (!liftableAt(model, owner).includes(action.end)) return refused('unknown', action.end);
  const refusal = reachPart(model.book, bench, owner);
  if (refusal !== null) return { refused: refusal };
  if (bench.lifted.includes(action.end) === (action.do === 'lift')) return refused('already', action.end);
  const lifted = action.do === 'lift' ? withOne(bench.lifted, action.end) : without(bench.lifted, action.end);
  const next = { ...bench, lifted };
  const stud = isStudWork(model, `W:${action.end.split('@')[0]}`);
  return does(next, [{ hands: next }], [{ event: stud ? 'stud' : 'pull', at: action.end }]);
}

function exchange(at: Situation, one: string, other: string): Outcome {
  const { model, bench } = at;
  const relay = (id: string) => model.book.parts.find((p) => p.id === id && p.kind === 'relay');
  const [a, b] = [relay(one), relay(other)];
  if (a === undefined || b === undefined || a.kind !== 'relay' || b.kind !== 'relay')
    return refused('not-in-socket', one);
  if (one === other) return refused('already', other);
  if (a.type !== b.type) return refused('not-alike', other);
  const refusal = reachPart(model.book, bench, one) ?? reachPart(model.book, bench, other);
  if (refusal !== null) return { refused: refusal };
  const same = exchangedWith(bench, one, other);
  const pair: [string, string] = [one, other];
  const exchanged = same === undefined ? [...bench.exchanged, pair] : without(bench.exchanged, same);
  const next: Bench = { ...bench, exchanged };
  return does(next, [{ hands: next }], [{ event: 'pull' }]);
}

function repair(at: Situation, verb: string, target: string): Outcome {
  const { model, bench } = at;
  const refusal = reachTarget(model, bench, target);
  if (refusal !== null) return { refused: refusal };
  if (!repairsFor(model, target).includes(verb)) return refused('wrong-repair', verb);
  const plug = target.startsWith('X:') ? target.slice(2).split('.')[0] : null;
  if (plug !== null && !bench.unplugged.includes(plug)) return refused('must-be-parted', plug);
  const pulled = without(bench.pulled, target);
  const next = { ...bench, pulled };
  const stud = isStudWork(model, target);
  const dead = verb !== 'adjust' && verb !== 'charge';
  return does(
    next,
    [{ cure: verb, target }, { hands: next }],
    dead ? [{ event: stud ? 'stud' : 'pull', at: target }] : [],
  );
}

function verify(at: Situation): Outcome {
  const { model, bench, job, controlOf } = at;
  if (!inCab(model.book, bench.zone)) return refused('not-here', model.book.cab[0]);
  const steps = job.complaint.flatMap((s) => trialSteps(model.book, bench, controlOf, s.controls));
  return does(bench, steps, [{ event: 'crank' }, ...ohmsOf(bench)]);
}

function lookAt(at: Situation, id: string): Outcome {
  const { model, bench } = at;
  const { book } = model;
  if (book.zones.some((z) => z.id === id))
    return id === bench.zone ? does(bench, [{ listen: id }]) : refused('not-here', id);
  const refusal =
    id.includes('@') || id.startsWith('W:')
      ? reachTarget(model, bench, id.startsWith('W:') ? id : `W:${id.split('@')[0]}`)
      : reachPart(book, bench, id);
  return refusal === null ? does(bench) : { refused: refusal };
}

function paper(at: Situation, action: Action): Outcome {
  const { bench, model } = at;
  switch (action.do) {
    case 'mark':
      return does({
        ...bench,
        marked: action.suspect ? withOne(bench.marked, action.target) : without(bench.marked, action.target),
      });
    case 'codes':
    case 'clearCodes':
      if (!inCab(model.book, bench.zone)) return refused('not-here', model.book.cab[0]);
      return does(bench, action.do === 'clearCodes' ? [{ clearCodes: true }] : [{ readCodes: true }]);
    default:
      return does(bench);
  }
}

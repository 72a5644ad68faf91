/** Actions turned into steps of the machine. Depends on the bench and on where the controls stand, on nothing measured. */
import type { Book, ControlSpec } from '../machine/index.ts';
import { type Bench, inCab } from './bench.ts';
import { READING_AFTER_MS, type Step } from './rig.ts';

/** A hand passes each detent in this time, and waits for the lamps before it turns a key on to start, ms. */
const DETENT_MS = 100;
const LAMP_CHECK_MS = 1000;
/** How long a momentary control is held when nothing else is said, ms. */
export const HOLD_MS = 2000;
/** After the release: relays fall out, the crankshaft stands, ms. */
const RELEASE_MS = 300;

export type ControlOf = (control: string) => string;

export const controlSpec = (book: Book, id: string): ControlSpec | undefined => book.controls.find((c) => c.id === id);

/** The detents on the way, the reading at its moment, and the spring back. */
export function operateSteps(
  book: Book,
  bench: Bench,
  at: ControlOf,
  id: string,
  value: string,
  holdMs = HOLD_MS,
): Step[] {
  const spec = controlSpec(book, id);
  if (spec === undefined) return [];
  const springsTo = spec.springs?.[value];
  const steps: Step[] = detents(spec, at(id), value).map((detent) => ({ control: id, value: detent }));
  const timed = steps.flatMap((step, i): Step[] => {
    if (i === steps.length - 1) return [step];
    const beforeSpring = springsTo !== undefined && i === steps.length - 2;
    return [step, { pass: beforeSpring ? LAMP_CHECK_MS : DETENT_MS }];
  });
  if (timed.length === 0) timed.push({ control: id, value });
  timed.push({ pass: READING_AFTER_MS }, { notice: bench.zone, bench });
  if (springsTo === undefined) return timed;
  timed.push({ pass: Math.max(0, holdMs - READING_AFTER_MS) }, { listen: bench.zone });
  timed.push({ control: id, value: springsTo }, { pass: RELEASE_MS });
  return timed;
}

/** Positions passed on the way, the target included; a control with no order jumps. */
function detents(spec: ControlSpec, from: string, to: string): string[] {
  const a = spec.values.indexOf(from);
  const b = spec.values.indexOf(to);
  if (a < 0 || b < 0 || a === b) return [to];
  const way = b > a ? 1 : -1;
  const path: string[] = [];
  for (let i = a + way; i !== b + way; i += way) path.push(spec.values[i]);
  return path;
}

/** Somebody sits in the seat: the student in the cab with the seat down, or the helper. */
export function seatSteps(book: Book, bench: Bench, helper: boolean): Step[] {
  const { control, occupied, empty, tiltedBy } = book.seat;
  const own = inCab(book, bench.zone) && !bench.opened.includes(tiltedBy);
  return [{ control, value: own || helper ? occupied : empty }];
}

/** Controls set one after the other, then looked at and listened to; used for complaints and interlocks. */
export function trialSteps(book: Book, bench: Bench, at: ControlOf, controls: readonly [string, string][]): Step[] {
  const set = new Map<string, string>();
  const now: ControlOf = (id) => set.get(id) ?? at(id);
  const steps: Step[] = [];
  for (const [id, value] of controls) {
    steps.push(...operateSteps(book, bench, now, id, value));
    set.set(id, controlSpec(book, id)?.springs?.[value] ?? value);
  }
  return steps;
}

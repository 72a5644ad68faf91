/** Does the machine show a complaint? Tried on a copy, so that asking changes nothing. */
import type { Book, InterlockSpec } from '../machine/index.ts';
import { firstBench } from './bench.ts';
import { Rig, type Seen, type Step } from './rig.ts';
import type { Symptom } from './spec.ts';
import { trialSteps } from './steps.ts';

type Expectation = Pick<Symptom, 'controls' | 'seen' | 'missing'>;

export const matches = (expected: Expectation, codes: readonly string[]): boolean =>
  expected.seen.every((code) => codes.includes(code)) && expected.missing.every((code) => !codes.includes(code));

/** Sets the controls from the first zone of the book (the operator's place) and compares what is noticed. */
export function shows(rig: Rig, expected: Expectation): boolean {
  return matches(expected, tryOut(rig, expected).codes);
}

/**
 * What an observer at the operator's place notices: whatever stands when the eye has had time to read
 * (`READING_AFTER_MS` after the control moved) or when the control is let go. What only blinks in between is not seen.
 * In slices of time where `sliceMs` is given; when `stop` says so, the trial ends there.
 */
export function tryOut(
  rig: Rig,
  expected: Expectation,
  stop?: (rig: Rig, soFar: Seen) => boolean,
  sliceMs?: number,
): Seen {
  const copy = rig.copy();
  const { book } = copy.world.model;
  const bench = { ...firstBench(book), zone: operatorZone(book) };
  const steps = (controls: Expectation['controls']) =>
    trialSteps(book, bench, (id) => copy.world.controlOf(id), controls);
  // What the last control brings counts; the ones before only set the stage, and the engine has time to stand.
  const before = expected.controls.slice(0, -1);
  if (before.length > 0) copy.run([...steps(before), { pass: STAND_STILL_MS }]);
  const last = steps(expected.controls.slice(-1));
  return copy.run(sliceMs === undefined ? last : sliced(last, sliceMs), (soFar) => stop?.(copy, soFar) ?? false);
}

/** What a sound machine would show at these controls and this one does not: it isn't mended by falling silent. */
export function lacking(rig: Rig, expected: Expectation): string[] {
  const { model } = rig.world;
  const sound = Rig.arriving(model, [], {});
  for (const { id, surroundings } of model.book.controls) {
    if (surroundings) sound.world.setControl(id, rig.world.controlOf(id));
  }
  const does = tryOut(atRest(rig, expected), expected).codes;
  return tryOut(sound, expected).codes.filter((code) => !does.includes(code));
}

/** A copy with these controls back where they usually stand, and the engine with time to stand still. */
function atRest(rig: Rig, { controls }: Expectation): Rig {
  const copy = rig.copy();
  const { book } = rig.world.model;
  const usual = controls.flatMap(([id]) => book.controls.filter((c) => c.id === id));
  copy.run([...usual.map((c): Step => ({ control: c.id, value: c.initial })), { pass: STAND_STILL_MS }]);
  return copy;
}

/** The steps of a complaint, from the operator's place. */
export function complaintSteps(rig: Rig, expected: Expectation): Step[] {
  const { book } = rig.world.model;
  const bench = { ...firstBench(book), zone: operatorZone(book) };
  return trialSteps(book, bench, (id) => rig.world.controlOf(id), expected.controls);
}

function sliced(steps: readonly Step[], sliceMs: number): Step[] {
  return steps.flatMap((step) => {
    if (!('pass' in step)) return [step];
    const whole = Math.floor(step.pass / sliceMs);
    const slices: Step[] = Array.from({ length: whole }, () => ({ pass: sliceMs }));
    const rest = step.pass - whole * sliceMs;
    return rest > 0 ? [...slices, { pass: rest }] : slices;
  });
}

/** Time for an engine to run down and relays to fall out after the key, ms. */
const STAND_STILL_MS = 5000;

export const operatorZone = (book: Book): string => book.cab[0];

/** Interlocks that do not hold, by id. */
export function failingInterlocks(rig: Rig): InterlockSpec[] {
  return rig.world.model.book.interlocks.filter((interlock) => !shows(rig, interlock));
}

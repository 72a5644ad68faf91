/** Does the machine show a complaint? Tried on a copy, so that asking changes nothing. */
import type { Book, InterlockSpec } from '../machine/index.ts';
import { firstBench } from './bench.ts';
import type { Rig, Seen } from './rig.ts';
import type { Symptom } from './spec.ts';
import { trialSteps } from './steps.ts';

type Expectation = Pick<Symptom, 'controls' | 'seen' | 'missing'>;

export const matches = (expected: Expectation, codes: readonly string[]): boolean =>
  expected.seen.every((code) => codes.includes(code)) && expected.missing.every((code) => !codes.includes(code));

/** Sets the controls from the first zone of the book (the operator's place) and compares what is noticed. */
export function shows(rig: Rig, expected: Expectation): boolean {
  return matches(expected, tryOut(rig, expected).codes);
}

export function tryOut(rig: Rig, expected: Expectation): Seen {
  const copy = rig.copy();
  const { book } = copy.world.model;
  const bench = { ...firstBench(book), zone: operatorZone(book) };
  return copy.run(trialSteps(book, bench, (id) => copy.world.controlOf(id), expected.controls));
}

export const operatorZone = (book: Book): string => book.cab[0];

/** Interlocks that do not hold, by id. */
export function failingInterlocks(rig: Rig): InterlockSpec[] {
  return rig.world.model.book.interlocks.filter((interlock) => !shows(rig, interlock));
}

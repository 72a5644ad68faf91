/** What the evidence so far says of every suspect, updated action by action over the same log as the real machine. */

import { QUANTITY_OF } from '../instruments/index.ts';
import type { Attempt, Record as Done, Seen } from '../job/index.ts';
import { Rig } from '../job/index.ts';
import { classesBetween, classOf, limitFor, type Yardstick } from './classes.ts';
import { type Suspect, suspectsOf } from './complaint.ts';

/**
 * One odd reading or a slip of the probe must not rule a suspect out for ever; a likelihood floor of 1e-3 to 1e-2 is
 * usual (common practice, no source).
 */
const FLOOR = 0.005;
/** Something seen on the spot (a green pin, a black link) speaks for its place by this much. */
const SIGN_FACTOR = 0.005;
/** One thing heard or seen that a suspect doesn't foretell, or the other way round. */
const SENSE_FACTOR = 0.3;

export type Prior = 'usual' | 'equal';

/** The state of knowledge before and after one action. */
export interface Step {
  index: number;
  /** Share of the probability by target, before the action. */
  before: ReadonlyMap<string, number>;
  after: ReadonlyMap<string, number>;
  /** Suspects (targets) with more than a hundredth of the probability. */
  left: number;
  /** Did the action bring evidence at all? */
  informative: boolean;
  /** Largest share of the probability that foresaw one and the same outcome; 1 means that nothing could be learned. */
  foreseen: number;
  /** How much of the probability went over to other targets, 0 to 1 (total variation). */
  moved: number;
}

interface Live {
  suspect: Suspect;
  weight: number;
}

export interface Belief {
  suspects: Suspect[];
  steps: Step[];
  /** Share of the probability that a repair of this kind on this target would mend the machine, before action `index`. */
  mends(index: number, target: string, verb: string): number;
}

export function beliefOver(
  attempt: Attempt,
  prior: Prior = 'usual',
  suspects: Suspect[] = suspectsOf(attempt.model, attempt.job),
): Belief {
  return beliefUnder(prior, attempt, suspects, tellAll(attempt, suspects));
}

/** The belief under both priors. What the suspects foretell is the same; only the weights that it moves are not. */
export function bothBeliefs(attempt: Attempt, suspects: Suspect[]): Readonly<Record<Prior, Belief>> {
  const told = tellAll(attempt, suspects);
  return {
    usual: beliefUnder('usual', attempt, suspects, told),
    equal: beliefUnder('equal', attempt, suspects, told),
  };
}

function beliefUnder(prior: Prior, attempt: Attempt, suspects: Suspect[], told: readonly Told[]): Belief {
  const lives: Live[] = suspects.map((suspect) => ({
    suspect,
    weight: prior === 'usual' ? suspect.weight : 1 / countAt(suspects, suspect.at),
  }));
  normalise(lives);
  const steps: Step[] = [];
  const weights: number[][] = [];
  attempt.records.forEach((record, i) => {
    weights.push(lives.map((l) => l.weight));
    steps.push(weigh(record, lives, told[i]));
  });
  return {
    suspects,
    steps,
    mends: (index, target, verb) =>
      suspects.reduce(
        (sum, s, i) => (s.at === target && s.cures.includes(verb) ? sum + (weights[index]?.[i] ?? 0) : sum),
        0,
      ),
  };
}

/** What an action told, and what each suspect, in order, had foretold of it. */
interface Told {
  informative: boolean;
  real: Observed;
  outcomes: Foretold[];
}

/** Each suspect's machine goes through the same steps as the real one. */
function tellAll({ model, job, records }: Attempt, suspects: readonly Suspect[]): Told[] {
  const sound = Rig.arriving(model, [], { ...job.arrival, regions: {} });
  const machines = suspects.map((suspect) => suspect.ends.map(quiet));
  const known = new Set<string>();
  return records.map((record) => {
    const expected = sound.run(record.steps);
    const yardstick = yardstickOf(record, expected, sound);
    const real = outcomeOf(record.seen, yardstick);
    // The same test with the same outcome, nothing moved in between, is no second witness.
    const test = JSON.stringify([testOf(record), sound.world.state.controls, real, record.signOf]);
    const again = known.has(test);
    known.add(test);
    return {
      informative: !again && (yardstick !== null || watched(record)),
      real,
      outcomes: machines.map((rigs) => foretell(rigs, record, yardstick)),
    };
  });
}

/** What was done and how the leads and the machine's parts stood. */
function testOf({ entry: { action }, after }: Done): unknown {
  const { leads, dial, redJack, instrument, unplugged, lifted, pulled, exchanged, zone } = after;
  // To zero the meter is to read it.
  const done = action.do === 'zero' ? { do: 'read' } : action;
  return [done, zone, leads, dial, redJack, instrument, unplugged, lifted, pulled, exchanged];
}

/** A suspect's machine of its own, which isn't asked whether a display stands still. */
function quiet(rig: Rig): Rig {
  const copy = rig.copy();
  copy.watches = false;
  return copy;
}

const countAt = (suspects: readonly Suspect[], at: string): number => suspects.filter((s) => s.at === at).length;

function normalise(lives: Live[]): void {
  const total = lives.reduce((sum, l) => sum + l.weight, 0);
  for (const live of lives) live.weight = total > 0 ? live.weight / total : 1 / lives.length;
}

function byTarget(lives: readonly Live[]): Map<string, number> {
  const shares = new Map<string, number>();
  for (const { suspect, weight } of lives) shares.set(suspect.at, (shares.get(suspect.at) ?? 0) + weight);
  return shares;
}

function distance(one: ReadonlyMap<string, number>, other: ReadonlyMap<string, number>): number {
  let sum = 0;
  for (const [at, share] of one) sum += Math.abs(share - (other.get(at) ?? 0));
  return sum / 2;
}

function weigh(record: Done, lives: Live[], { informative, real, outcomes }: Told): Step {
  const before = byTarget(lives);
  let foreseen = 1;
  if (informative) {
    foreseen = largestShare(lives, outcomes);
    lives.forEach((live, i) => {
      live.weight *= likelihood(outcomes[i], real);
      if (record.signOf !== undefined && record.signOf !== live.suspect.at) live.weight *= SIGN_FACTOR;
    });
    normalise(lives);
  }
  const after = byTarget(lives);
  const left = [...after.values()].filter((p) => p > 0.01).length;
  return { index: record.entry.index, before, after, left, informative, foreseen, moved: distance(before, after) };
}

/** Actions at which eyes and ears, or codes, say something. */
function watched(record: Done): boolean {
  return ['operate', 'codes', 'verify', 'look', 'wiggle', 'exchange'].includes(record.entry.action.do);
}

function yardstickOf(record: Done, expected: Seen, sound: Rig): Yardstick | null {
  const { red, black } = record.after.leads;
  if (record.seen.display === undefined || red === null || black === null || record.after.instrument !== 'meter')
    return null;
  const fn = record.after.dial;
  if (fn === 'off') return null;
  const { book } = sound.world.model;
  const battery = book.reference.split('.')[0];
  const supply = Math.max(1, Math.abs(sound.world.voltsBetween(`${battery}.+`, book.reference)));
  return { sound: expected.value ?? null, supply, limit: limitFor(book, red, black), quantity: QUANTITY_OF[fn] };
}

/** What was observed: the class of the display, where there was one, and what eyes and ears told. */
interface Observed {
  shown: string | null;
  codes: string[];
}

/** What a suspect foretells: the classes between its ends, and what would be noticed at each. */
interface Foretold {
  classes: ReadonlySet<string> | null;
  ends: string[][];
}

/** Signs, answers and verdicts are not foretold by any suspect's network. */
const machineCodes = (seen: Seen): string[] =>
  seen.codes.filter((code) => !/^(sign|answer|complaint|lacks|interlock|jack-fuse)/.test(code));

function outcomeOf(seen: Seen, yardstick: Yardstick | null): Observed {
  const display =
    seen.display === undefined ? null : yardstick === null ? seen.display.text : classOf(seen.value ?? null, yardstick);
  return { shown: display, codes: machineCodes(seen) };
}

function foretell(rigs: readonly Rig[], record: Done, yardstick: Yardstick | null): Foretold {
  const seen = rigs.map((rig) => rig.run(record.steps));
  const ends = seen.map(machineCodes);
  if (record.seen.display === undefined) return { classes: null, ends };
  if (yardstick === null) return { classes: new Set(seen.map((s) => s.display?.text ?? '')), ends };
  return {
    classes: classesBetween(
      seen.map((s) => s.value ?? null),
      yardstick,
    ),
    ends,
  };
}

/** Flat over the classes that the suspect allows; each thing noticed that it doesn't foretell counts against it. */
function likelihood(foretold: Foretold, real: Observed): number {
  const { classes } = foretold;
  const display = classes === null || real.shown === null ? 1 : classes.has(real.shown) ? 1 / classes.size : FLOOR;
  const apart = Math.min(...foretold.ends.map((codes) => difference(codes, real.codes)));
  let senses = 1;
  for (let i = 0; i < apart; i++) senses *= SENSE_FACTOR;
  return Math.max(FLOOR * FLOOR, display * Math.max(FLOOR, senses));
}

function difference(one: readonly string[], other: readonly string[]): number {
  return one.filter((c) => !other.includes(c)).length + other.filter((c) => !one.includes(c)).length;
}

/** The largest share of the suspects that foretold one and the same outcome. */
function largestShare(lives: readonly Live[], foretold: readonly Foretold[]): number {
  const shares = new Map<string, number>();
  lives.forEach((live, i) => {
    const keys = new Set<string>();
    for (const codes of foretold[i].ends)
      for (const name of foretold[i].classes ?? ['']) keys.add(`${name} | ${codes.join(' ')}`);
    for (const key of keys) shares.set(key, (shares.get(key) ?? 0) + live.weight);
  });
  return Math.max(0, ...shares.values());
}

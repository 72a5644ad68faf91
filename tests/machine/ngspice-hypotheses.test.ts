/**
 * Whatever could be wrong with the machine by its book (part, wire or pin; every mode; the mildest and the worst of it),
 * alone and two at a time, in the states of the book's truth table: node volts as ngspice has them. Before a release many
 * more of them are taken, and on demand all. The faults are written into the netlist by hand (`by-hand.ts`).
 */
import { expect, it } from 'vitest';
import { netlistByHand } from '../support/by-hand.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { broughtTo, type Case, doubles, hypothesesOf, singles, titleOf } from '../support/hypotheses.ts';
import { Outside } from '../support/outside.ts';
import { STATES } from '../support/states.ts';

const RELEASE = process.env.OHMYARD_RELEASE !== undefined;
/** A network takes ngspice about 25 ms. */
const SINGLES = RELEASE ? 1000 : 60;
const DOUBLES = RELEASE ? 300 : 20;
/** `OHMYARD_EVERY=all`, or names of states with commas: every hypothesis in each of them. Each takes three minutes and more. */
const EVERY = process.env.OHMYARD_EVERY ?? '';
const WANTED = EVERY === 'all' ? Object.keys(STATES) : EVERY.split(',').filter((state) => state !== '');
/** Fixed, so that every run takes the same. */
const CHOICE = 45;
const TIMEOUT_MS = RELEASE ? 900_000 : 120_000;

const model = hobbinModel();
const all = hypothesesOf(model);

async function judge(cases: readonly Case[], remembers = true): Promise<Outside> {
  const outside = new Outside(remembers);
  for (const one of cases) {
    const world = broughtTo(model, one);
    const title = titleOf(one);
    await outside.judge(world, title, netlistByHand(world, 'by hand'));
  }
  console.info(outside.summary());
  return outside;
}

it(
  `single faults: ${SINGLES} of ${all.length} hypotheses in ${Object.keys(STATES).length} states, every sort among them`,
  async () => {
    const cases = singles(all, SINGLES, CHOICE);
    const sorts = new Set(cases.flatMap(({ hypotheses }) => hypotheses.map((one) => one.sort)));
    expect(sorts).toEqual(new Set(all.map((one) => one.sort)));
    expect(new Set(cases.map(({ state }) => state)).size).toBe(Object.keys(STATES).length);
    expect((await judge(cases)).states).toBe(SINGLES);
  },
  TIMEOUT_MS,
);

it(
  `two faults at once: ${DOUBLES} pairs`,
  async () => {
    const cases = doubles(all, DOUBLES, CHOICE);
    expect(cases.every(({ hypotheses: [a, b] }) => a.at !== b.at)).toBe(true);
    expect((await judge(cases)).states).toBe(DOUBLES);
  },
  TIMEOUT_MS,
);

it.each(WANTED)(
  `all ${all.length} hypotheses in state %s`,
  async (state) => {
    const cases = all.map((hypothesis): Case => ({ hypotheses: [hypothesis], state }));
    expect((await judge(cases, false)).states).toBe(all.length);
  },
  900_000,
);

/** Everything that could be wrong with the machine, at both ends of its severity, and a fixed choice of it. */
import { type SuspectFamily, suspectFamilies } from '../../src/diagnosis/index.ts';
import type { Model, World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { drive } from './drive.ts';
import { sample } from './list.ts';
import { STATES } from './states.ts';

export interface Hypothesis {
  at: string;
  /** Wire, pin or part, with its mode. */
  sort: string;
  title: string;
  changes: Change[];
  /** Controls that somebody left in a wrong place. */
  controls: Record<string, string>;
}

export interface Case {
  hypotheses: Hypothesis[];
  state: string;
}

function atEnd(family: SuspectFamily, ohms: number | null): Hypothesis {
  const sort = { 'W:': 'wire', 'X:': 'pin' }[family.at.slice(0, 2)] ?? 'part';
  return {
    at: family.at,
    sort: `${sort} ${family.mode}`,
    title: ohms === null ? family.id : `${family.id}, ${ohms}`,
    changes: family.faults(ohms ?? 0).flatMap((fault) => fault.changes),
    controls: family.controls ?? {},
  };
}

/** The mildest and the worst of a family, ohms; null, once, for one without degrees. */
export function endsOf({ severities }: SuspectFamily): (number | null)[] {
  if (severities.length === 0) return [null];
  return [...new Set([Math.min(...severities), Math.max(...severities)])];
}

export const hypothesesOf = (model: Model): Hypothesis[] =>
  suspectFamilies(model).flatMap((family) => endsOf(family).map((ohms) => atEnd(family, ohms)));

const pick = <T>(list: readonly T[], start: number): T => sample(list, 1, start)[0];

/** One of every sort of fault, and more from all of them up to `count`, each in some state of the book's truth table. */
export function singles(all: readonly Hypothesis[], count: number, choice: number): Case[] {
  const sorts = [...new Set(all.map((one) => one.sort))];
  const each = sorts.map((sort, i) =>
    pick(
      all.filter((one) => one.sort === sort),
      choice + i * 7919,
    ),
  );
  const chosen = [...each, ...sample(all, Math.max(0, count - each.length), choice)].slice(0, count);
  const states = Object.keys(STATES);
  return chosen.map((hypothesis, i) => ({ hypotheses: [hypothesis], state: pick(states, choice + i * 104_729) }));
}

/** Two faults at once, in different places. */
export function doubles(all: readonly Hypothesis[], count: number, choice: number): Case[] {
  const states = Object.keys(STATES);
  return Array.from({ length: count }, (_, i) => {
    const first = pick(all, choice + i * 15_485_863);
    const second = pick(
      all.filter((one) => one.at !== first.at),
      choice + i * 32_452_843 + 1,
    );
    return { hypotheses: [first, second], state: pick(states, choice + i * 49_979_687 + 2) };
  });
}

export const titleOf = ({ hypotheses, state }: Case): string =>
  `${hypotheses.map((one) => one.title).join(' and ')} in ${state}`;

/** The machine with these faults, brought into the state as an operator would. */
export function broughtTo(model: Model, { hypotheses, state }: Case): World {
  const arrive = (world: World): void => {
    for (const { controls } of hypotheses) {
      for (const [control, value] of Object.entries(controls)) world.setControl(control, value);
    }
  };
  return drive({ model, settings: STATES[state], changes: hypotheses.flatMap((one) => one.changes), arrive });
}

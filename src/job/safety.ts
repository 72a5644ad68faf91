/** The book's precautions, checked at the moment that they matter. */
import {
  type Book,
  compileGuard,
  type PrecautionSpec,
  type SafetyCheck,
  type SafetyEvent,
  type World,
} from '../machine/index.ts';
import type { Bench } from './bench.ts';

/** A precaution that was not in place when it was needed. */
export interface Lapse {
  /** Id of the check, or `open:AC6` / `work:AC6` for an access step. */
  check: string;
  missing: string[];
  critical: boolean;
}

/** Does a precaution stand now? */
export function stands(world: World, bench: Bench, precaution: PrecautionSpec): boolean {
  if (precaution.lifted !== undefined) return bench.lifted.includes(precaution.lifted);
  if (precaution.pulled !== undefined) return bench.pulled.includes(precaution.pulled);
  if (precaution.needs !== null) return compileGuard(world.model, precaution.needs)(world);
  return bench.precautions.includes(precaution.id);
}

/** A precaution that a hand sets, rather than the machine's state. */
export const isSetByHand = (p: PrecautionSpec): boolean =>
  p.needs === null && p.pulled === undefined && p.lifted === undefined;

function standing(world: World, bench: Bench, id: string): boolean {
  const precaution = world.model.book.precautions.find((p) => p.id === id);
  return precaution === undefined || stands(world, bench, precaution);
}

/** What a precaution set by hand needs from the machine and does not have: the first such precaution; null when nothing. */
export function contradicted(world: World, bench: Bench, precaution: PrecautionSpec): string | null {
  return precaution.while?.find((id) => !standing(world, bench, id)) ?? null;
}

/** Precautions set by hand that are no longer true of the machine. */
export const untrue = (world: World, bench: Bench): string[] =>
  bench.precautions.filter((id) =>
    world.model.book.precautions.some((p) => p.id === id && contradicted(world, bench, p) !== null),
  );

/** A moment at which precautions matter, with what is opened or worked on in it. */
export interface Moment {
  event: SafetyEvent;
  access?: string;
  at?: string;
  /** Asked for when the action is done, not before it. */
  after?: boolean;
}

/** Does a check ask at this moment? */
function asks(check: SafetyCheck, bench: Bench, { event, access, at }: Moment): boolean {
  const among = (list: readonly string[] | undefined, id: string | undefined): boolean =>
    list === undefined || (id !== undefined && list.includes(id));
  return check.on === event && among(check.zones, bench.zone) && among(check.access, access) && among(check.at, at);
}

/** Checks that fail at a moment, here and now. */
export function lapsesAt(world: World, bench: Bench, moment: Moment): Lapse[] {
  const { book } = world.model;
  const { event, access } = moment;
  const lapses: Lapse[] = [];
  for (const check of book.checks) {
    if (!asks(check, bench, moment)) continue;
    const missing = check.needs.filter((any) => !any.some((id) => standing(world, bench, id)));
    if (missing.length > 0)
      lapses.push({ check: check.id, missing: missing.map((any) => any[0]), critical: check.critical });
  }
  if (access !== undefined && event === 'open') lapses.push(...openLapses(world, bench, access));
  return lapses;
}

function openLapses(world: World, bench: Bench, access: string): Lapse[] {
  const step = world.model.book.access.find((a) => a.id === access);
  const missing = (step?.toOpen ?? []).filter((id) => !standing(world, bench, id));
  if (missing.length === 0) return [];
  const critical = missing.some((id) => criticalOf(world.model.book, id));
  return [{ check: `open:${access}`, missing, critical }];
}

const criticalOf = (book: Book, id: string): boolean => book.precautions.find((p) => p.id === id)?.critical ?? false;

/** Precautions set by hand that an event takes away. */
export function lapsing(book: Book, bench: Bench, event: SafetyEvent): string[] {
  return bench.precautions.filter((id) => book.precautions.find((p) => p.id === id)?.lapsesOn?.includes(event));
}

/** Precautions that a helper keeps by being there. */
export const heldByHelper = (book: Book): string[] => book.precautions.filter((p) => p.needsHelper).map((p) => p.id);

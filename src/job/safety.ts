/** The book's precautions, checked at the moment that they matter. */
import { type Book, compileGuard, type PrecautionSpec, type SafetyEvent, type World } from '../machine/index.ts';
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

/** Checks that fail at an event, here and now. */
export function lapsesAt(world: World, bench: Bench, event: SafetyEvent, access?: string): Lapse[] {
  const { book } = world.model;
  const lapses: Lapse[] = [];
  for (const check of book.checks) {
    if (check.on !== event || (check.zones !== undefined && !check.zones.includes(bench.zone))) continue;
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

/** Precautions that stand for as long as a helper does nothing else: only the helper's moving ends them. */
export const heldByHelper = (book: Book): string[] =>
  book.precautions.filter((p) => p.lapsesOn?.length === 1 && p.lapsesOn[0] === 'helper-moves').map((p) => p.id);

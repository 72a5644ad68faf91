/** Everything in a book that no single file's schema can see. */
import type { Book } from '../machine/book.ts';
import { checkCircuit } from './check-circuit.ts';
import { checkGuards } from './check-guards.ts';
import { checkParts } from './check-parts.ts';
import { checkPlaces } from './check-places.ts';
import { checkWiring } from './check-wiring.ts';
import { namesOf } from './names.ts';
import type { Origins } from './origins.ts';
import type { Problem } from './problem.ts';

export function checkBook(book: Book, origins: Origins): Problem[] {
  const names = namesOf(book, origins);
  const problems = [checkParts, checkPlaces, checkWiring, checkGuards].flatMap((check) => check(names));
  // Feeds and grounds are followed only where every wire has two ends: one missing name would break a hundred paths.
  return problems.length > 0 ? problems : checkCircuit(names);
}

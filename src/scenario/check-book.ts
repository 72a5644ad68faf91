/** Everything in a book that no single file's schema can see. */
import type { Book } from '../machine/book.ts';
import type { Origins } from './origins.ts';
import type { Problem } from './problem.ts';

export function checkBook(_book: Book, _origins: Origins): Problem[] {
  return [];
}

/** The book's precautions in its own words, with names for its numbers. */
import type { Model } from '../../machine/index.ts';
import { plain } from './plain.ts';

/** What is said when it is in place: `Wheels chocked.` */
export const doneText = (model: Model, id: string): string =>
  plain(model, model.book.precautions.find((p) => p.id === id)?.done ?? id);

/** What is to be done: `Chock the wheels on level ground.` */
export const toDoText = (model: Model, id: string): string =>
  plain(model, model.book.precautions.find((p) => p.id === id)?.text ?? id);

/** Why a check is made; null where the book has no such check. */
export function whyText(model: Model, check: string): string | null {
  const why = model.book.checks.find((c) => c.id === check)?.why;
  return why === undefined ? null : plain(model, why);
}

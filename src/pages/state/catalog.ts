/** The book and the jobs that come with the page. */
import { layoutSheet } from '../../game/sheet/index.ts';
import type { Drawing } from '../../game/drawing.ts';
import type { JobSpec } from '../../job/index.ts';
import { type Book, buildModel, type Model } from '../../machine/index.ts';
import { readBook } from '../../scenario/read-book.ts';
import { type SheetSpec, sheetSchema } from '../../scenario/schema-sheet.ts';

const bookFiles = import.meta.glob<unknown>('../../../scenarios/machines/hobbin-45/*.json', { eager: true, import: 'default' });
const sheetFiles = import.meta.glob<unknown>('../../../scenarios/machines/hobbin-45/sheets/*.json', {
  eager: true,
  import: 'default',
});
const jobFiles = import.meta.glob<JobSpec>('../../../scenarios/jobs/*.json', { eager: true, import: 'default' });

export interface Catalog {
  book: Book;
  model: Model;
  jobs: JobSpec[];
  sheets: SheetSpec[];
}

let kept: Catalog | null = null;

/** Read once; a book that its own reader refuses is a broken build, so that is an error. */
export function catalog(): Catalog {
  if (kept !== null) return kept;
  const result = readBook(bookFiles);
  if (!result.ok) throw new Error(`the book: ${JSON.stringify(result.problems.slice(0, 3))}`);
  const jobs = Object.values(jobFiles).sort((a, b) => a.band - b.band || (a.id < b.id ? -1 : 1));
  const sheets = Object.values(sheetFiles)
    .map((file) => sheetSchema.parse(file))
    .sort((a, b) => a.number - b.number);
  kept = { book: result.book, model: buildModel(result.book), jobs, sheets };
  return kept;
}

export const jobById = (id: string): JobSpec | undefined => catalog().jobs.find((job) => job.id === id);

const laid = new Map<string, Drawing>();

export function sheetDrawing(id: string): Drawing | null {
  const known = laid.get(id);
  if (known !== undefined) return known;
  const { book, sheets } = catalog();
  const spec = sheets.find((s) => s.id === id);
  if (spec === undefined) return null;
  const drawing = layoutSheet(book, spec, sheets);
  laid.set(id, drawing);
  return drawing;
}

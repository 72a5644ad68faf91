/** The book and the jobs that come with the page. */
import type { JobSpec } from '../../job/index.ts';
import { type Book, buildModel, type Model } from '../../machine/index.ts';
import { readBook } from '../../scenario/read-book.ts';
import { readJob } from '../../scenario/read-job.ts';

const bookFiles = import.meta.glob<unknown>('../../../scenarios/machines/hobbin-45/*.json', {
  eager: true,
  import: 'default',
});
const jobFiles = import.meta.glob<unknown>('../../../scenarios/jobs/*.json', { eager: true, import: 'default' });

export interface Catalog {
  book: Book;
  model: Model;
  jobs: JobSpec[];
}

let kept: Catalog | null = null;

/** Read once. What its own reader refuses is a broken build, so that is an error. */
export function catalog(): Catalog {
  if (kept !== null) return kept;
  const result = readBook(bookFiles);
  if (!result.ok) throw new Error(`the book: ${JSON.stringify(result.problems.slice(0, 3))}`);
  const model = buildModel(result.book);
  const jobs = Object.entries(jobFiles).map(([file, value]) => {
    const job = readJob(model, file, value);
    if (!job.ok) throw new Error(`a job: ${JSON.stringify(job.problems.slice(0, 3))}`);
    return job.job;
  });
  jobs.sort((a, b) => a.band - b.band || (a.id < b.id ? -1 : 1));
  kept = { book: result.book, model, jobs };
  return kept;
}

export const jobById = (id: string): JobSpec | undefined => catalog().jobs.find((job) => job.id === id);

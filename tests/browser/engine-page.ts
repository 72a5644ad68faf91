/** The engine alone, for a page without anything else: the page's own book and jobs, and its live machine. */
import { type Action, Attempt } from '../../src/job/index.ts';
import { catalog, jobById } from '../../src/pages/state/catalog.ts';
import { type Worked, worked } from '../support/worked.ts';

declare global {
  interface Window {
    work(job: string, actions: Action[]): Worked;
  }
}

window.work = (id, actions) => {
  const job = jobById(id);
  if (job === undefined) throw new RangeError(`no such job: ${id}`);
  const attempt = new Attempt(catalog().model, job);
  attempt.rig.goLive();
  return worked(attempt, actions);
};

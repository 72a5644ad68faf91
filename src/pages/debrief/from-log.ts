/** An attempt that came as a file, opened for its debrief. It is not kept in this browser. */
import type { Attempt } from '../../job/index.ts';
import { catalog } from '../state/catalog.ts';
import { Session } from '../state/session.ts';
import { shelf } from '../state/store.ts';

/** Address of the debrief of whatever log was read in last. */
const ID = 'from-log';

/** Nothing of it is stored: it belongs to somebody else. */
const nowhere = {
  lasting: false,
  list: async () => [],
  begin: async () => {},
  append: async () => {},
  change: async () => {},
  load: async () => null,
  remove: async () => {},
};

export function showLog(attempt: Attempt, differs: boolean): void {
  const { header } = attempt.log;
  const stored = {
    id: ID,
    jobId: attempt.job.id,
    header,
    takenAt: '',
    tenths: attempt.tenths,
    ended: attempt.phase === 'ended',
    practice: false,
  };
  const open = new Session(catalog().model, attempt.job, stored, nowhere, attempt);
  shelf.update({ open, differs });
  location.hash = `#/debrief/${ID}`;
}

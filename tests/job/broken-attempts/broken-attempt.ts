/** An attempt of ours with one thing broken, and what the reader and then the replay say of it. */
import { type Difference, replay } from '../../../src/job/index.ts';
import type { Problem } from '../../../src/scenario/problem.ts';
import { readAttempt } from '../../../src/scenario/read-attempt.ts';
import { hobbinModel } from '../../support/hobbin.ts';
import { ownWay, theJob } from '../at-work.ts';
import type { Json } from '../broken-jobs/broken-job.ts';

const JOB = 'job-06';

function broken(edit: (log: Json) => void): unknown {
  const log: Json = JSON.parse(JSON.stringify(ownWay(JOB).log));
  edit(log);
  return log;
}

/** What the reader says; nothing when it finds the shape right. */
export function problemsOfBroken(edit: (log: Json) => void): Problem[] {
  const read = readAttempt('attempt.json', broken(edit));
  return read.ok ? [] : read.problems;
}

/** The first thing that the replay says of a log whose shape is right. */
export function firstDifference(edit: (log: Json) => void): Difference | undefined {
  const read = readAttempt('attempt.json', broken(edit));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return replay(hobbinModel(), theJob(JOB), read.log).differences[0];
}

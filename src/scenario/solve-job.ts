/** Can a job be done, safely, as it says? Its sound way is worked through on the machine. */
import { Attempt, isRefusal, type JobSpec, Rig, shows } from '../job/index.ts';
import type { Model } from '../machine/index.ts';
import type { Problem } from './problem.ts';

export function soundWayProblems(model: Model, job: JobSpec, file: string): Problem[] {
  const problems: Problem[] = [];
  const say = (path: string, code: string, found: string, expected: string) =>
    problems.push({ file, path, code, found, expected });
  const arriving = Rig.arriving(model, job.faults, job.arrival);
  job.complaint.forEach((symptom, i) => {
    if (!shows(arriving, symptom))
      say(
        `complaint[${i}]`,
        'complaint-not-there',
        'the machine as it arrives does not show it',
        'the complaint on arrival',
      );
  });
  const attempt = new Attempt(model, job);
  for (const [i, action] of job.path.entries()) {
    const result = attempt.act(action);
    if (isRefusal(result)) {
      say(`path[${i}]`, 'path-refused', `${result.code} ${result.what}`, 'an action that can be done here');
      return problems;
    }
    for (const lapse of result.lapses)
      say(
        `path[${i}]`,
        'path-unsafe',
        `${lapse.check} without ${lapse.missing.join(', ')}`,
        'every precaution in place',
      );
  }
  const ending = attempt.records[attempt.records.length - 1]?.entry.action;
  if (ending?.do !== 'finish' || ending.ending !== job.ending)
    say('path', 'path-unfinished', ending?.do ?? 'nothing', `finish with ${job.ending}`);
  job.complaint.forEach((symptom, i) => {
    if (shows(attempt.rig, symptom))
      say(`complaint[${i}]`, 'complaint-stays', 'still there after the path', 'a machine without the complaint');
  });
  return problems;
}

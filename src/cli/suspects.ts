import { beliefOver, suspectsOf } from '../diagnosis/index.ts';
import { type Attempt, replay } from '../job/index.ts';
import { readAttempt } from '../scenario/read-attempt.ts';
import { loadJson } from './files.ts';
import { jobOf, problemLine } from './library.ts';
import { parse, Usage } from './options.ts';

/** `suspects JOB [ATTEMPT]`: what the complaint leaves, and what the log then leaves of it. */
export function suspects(args: string[]): number {
  const { values, positionals } = parse(args, { json: { type: 'boolean' } });
  const [name, file] = positionals;
  if (name === undefined) throw new Usage('suspects needs a job');
  const { model, job } = jobOf(name);
  const all = suspectsOf(model, job);
  const total = all.reduce((sum, s) => sum + s.weight, 0);
  const shares = new Map<string, number>();
  for (const s of all) shares.set(s.at, (shares.get(s.at) ?? 0) + s.weight / total);
  const left = file === undefined ? shares : afterLog(file);
  const rows = [...left].sort((a, b) => b[1] - a[1]);
  if (values.json) console.log(JSON.stringify(rows.map(([at, share]) => ({ at, share }))));
  else for (const [at, share] of rows) console.log(`${at.padEnd(12)} ${(share * 100).toFixed(1)} %`);
  return 0;

  function afterLog(path: string): ReadonlyMap<string, number> {
    const json = loadJson(path);
    if (!json.ok) throw new Usage(problemLine(json.problem));
    const read = readAttempt(path, json.value);
    if (!read.ok) throw new Usage(read.problems.map(problemLine).join('\n'));
    const attempt: Attempt = replay(model, job, read.log).attempt;
    const { steps } = beliefOver(attempt, 'usual', all);
    return steps[steps.length - 1]?.after ?? shares;
  }
}

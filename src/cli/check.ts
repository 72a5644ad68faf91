import { statSync } from 'node:fs';
import { replay } from '../job/index.ts';
import type { Problem } from '../scenario/problem.ts';
import { readAttempt } from '../scenario/read-attempt.ts';
import { readJob } from '../scenario/read-job.ts';
import { loadBookFiles, loadJson } from './files.ts';
import { jobOf, modelOf, problemLine } from './library.ts';
import { parse, Usage } from './options.ts';

/** `check FILE…`: a folder is a book; a file is a job or an attempt by what it holds. */
export function check(args: string[]): number {
  const { values, positionals } = parse(args, { json: { type: 'boolean' } });
  if (positionals.length === 0) throw new Usage('check needs at least one file');
  const problems = positionals.flatMap(problemsIn);
  if (values.json) console.log(JSON.stringify(problems, null, 2));
  else for (const problem of problems) console.log(problemLine(problem));
  if (!values.json && problems.length === 0) console.log(`${positionals.length} checked, nothing wrong`);
  return problems.length === 0 ? 0 : 1;
}

function problemsIn(file: string): Problem[] {
  if (statSync(file, { throwIfNoEntry: false })?.isDirectory()) {
    const book = loadBookFiles(file);
    return book.ok ? [] : book.problems;
  }
  const json = loadJson(file);
  if (!json.ok) return [json.problem];
  const value = json.value as { header?: unknown; machine?: unknown } | null;
  if (value !== null && typeof value === 'object' && 'header' in value) return attemptProblems(file, value);
  const machine =
    value !== null && typeof value === 'object' && typeof value.machine === 'string' ? value.machine : 'hobbin-45';
  const read = readJob(modelOf(machine), file, json.value, true);
  return read.ok ? [] : read.problems;
}

function attemptProblems(file: string, value: unknown): Problem[] {
  const read = readAttempt(file, value);
  if (!read.ok) return read.problems;
  const { model, job } = jobOf(read.log.header.jobId);
  return replay(model, job, read.log).differences.map((d) => ({
    file,
    path: d.path,
    code: d.code,
    found: d.found,
    expected: d.expected,
  }));
}

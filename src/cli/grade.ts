import { CRITERIA, type Grade, gradeOf } from '../grading/index.ts';
import { replay } from '../job/index.ts';
import { readAttempt } from '../scenario/read-attempt.ts';
import { loadJson } from './files.ts';
import { jobOf, problemLine } from './library.ts';
import { parse, Usage } from './options.ts';

/** `grade ATTEMPT…`: replayed and verified here; a log that does not follow from the book and job is not graded. */
export function grade(args: string[]): number {
  const { values, positionals } = parse(args, { json: { type: 'boolean' } });
  if (positionals.length === 0) throw new Usage('grade needs at least one attempt');
  return Math.max(...positionals.map((file) => gradeFile(file, values.json ?? false)));
}

function gradeFile(file: string, json: boolean): number {
  const read = loadJson(file);
  if (!read.ok) {
    console.error(problemLine(read.problem));
    return 1;
  }
  const attempt = readAttempt(file, read.value);
  if (!attempt.ok) {
    for (const problem of attempt.problems) console.error(problemLine(problem));
    return 1;
  }
  const { model, job } = jobOf(attempt.log.header.jobId);
  const replayed = replay(model, job, attempt.log);
  for (const d of replayed.differences)
    console.error(`${file}: ${d.path}: ${d.code}: found ${d.found}, expected ${d.expected}`);
  if (replayed.differences.length > 0) return 1;
  const result = gradeOf(replayed.attempt);
  console.log(json ? JSON.stringify({ file, ...result }) : asText(file, result));
  return 0;
}

function asText(file: string, result: Grade): string {
  const rows = CRITERIA.map(
    (c) => `  ${c.padEnd(9)} ${String(result.criteria[c].points).padStart(5)} of ${result.criteria[c].of}`,
  );
  const findings = result.findings.map((f) => `  -${f.lost} ${f.criterion}: ${f.code} ${JSON.stringify(f.params)}`);
  return [`${file}: ${result.total} of 100, ${result.result}`, ...rows, ...findings].join('\n');
}

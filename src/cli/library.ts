/** The scenarios that come with the project, from disk. */
import { existsSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { JobSpec } from '../job/index.ts';
import { buildModel, type Model } from '../machine/index.ts';
import type { Problem } from '../scenario/problem.ts';
import { readJob } from '../scenario/read-job.ts';
import { loadBookFiles, loadJson } from './files.ts';
import { Usage } from './options.ts';

export const SCENARIOS = fileURLToPath(new URL('../../scenarios/', import.meta.url));

const models = new Map<string, Model>();

/** The compiled model of a machine's book. Throws with the first problem when the book is not right. */
export function modelOf(machine: string): Model {
  const known = models.get(machine);
  if (known !== undefined) return known;
  const dir = join(SCENARIOS, 'machines', machine);
  if (!existsSync(dir)) throw new Usage(`no such machine: ${machine}`);
  const read = loadBookFiles(dir);
  if (!read.ok) throw new Usage(read.problems.map(problemLine).join('\n'));
  const model = buildModel(read.book);
  models.set(machine, model);
  return model;
}

export const problemLine = (p: Problem): string =>
  `${p.file}: ${p.path}: ${p.code}: found ${p.found}, expected ${p.expected}`;

/** A job by its file or by its name among ours. */
export function jobOf(nameOrFile: string): { model: Model; job: JobSpec; file: string } {
  const file = existsSync(nameOrFile) ? nameOrFile : join(SCENARIOS, 'jobs', `${basename(nameOrFile, '.json')}.json`);
  const json = loadJson(file);
  if (!json.ok) throw new Usage(problemLine(json.problem));
  const machine = (json.value as { machine?: unknown } | null)?.machine;
  const model = modelOf(typeof machine === 'string' ? machine : '');
  const read = readJob(model, file, json.value);
  if (!read.ok) throw new Usage(read.problems.map(problemLine).join('\n'));
  return { model, job: read.job, file };
}

export const ourJobs = (): string[] =>
  readdirSync(join(SCENARIOS, 'jobs'))
    .filter((f) => f.endsWith('.json'))
    .sort();

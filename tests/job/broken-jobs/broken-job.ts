/** A job of ours with one thing broken, and what the reader says of it. */
import type { Problem } from '../../../src/scenario/problem.ts';
import { readJob } from '../../../src/scenario/read-job.ts';
import { hobbinModel } from '../../support/hobbin.ts';
import { jobJson } from '../at-work.ts';

export type Json = Record<string, unknown>;

/** `at(job, 'faults', 0, 'changes')`: what stands at a place of the file. */
export function at(json: unknown, ...path: (string | number)[]): Json {
  return path.reduce<unknown>((value, key) => (value as Json)[key], json) as Json;
}

/** Problems of a job after an edit; it is worked through as the checker does, so that its way is judged too. */
export function problemsOfBroken(id: string, edit: (job: Json) => void): Problem[] {
  const job = jobJson(id) as Json;
  edit(job);
  const read = readJob(hobbinModel(), `${id}.json`, job, true);
  return read.ok ? [] : read.problems;
}

/** Index of the first step of the way that does this. */
export function stepOf(job: Json, wanted: Json): number {
  const path = job.path as Json[];
  return path.findIndex((step) => Object.entries(wanted).every(([key, value]) => step[key] === value));
}

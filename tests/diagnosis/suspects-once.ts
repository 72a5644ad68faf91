/** Suspects worked out once for each complaint of a test file: jobs that begin alike share them. */
import type { Suspect } from '../../src/diagnosis/index.ts';
import { canonical, type JobSpec } from '../../src/job/index.ts';
import type { Model } from '../../src/machine/index.ts';

const known = new Map<string, Suspect[]>();

/** By `work`, which is `suspectsOf` of the engine: what a suspect is depends on the complaint and on how the machine arrives, and on nothing else. */
export function suspectsOnce(model: Model, job: JobSpec, work: (model: Model, job: JobSpec) => Suspect[]): Suspect[] {
  const key = canonical([job.machine, job.complaint, job.arrival]);
  const before = known.get(key);
  if (before !== undefined) return before;
  const suspects = work(model, job);
  known.set(key, suspects);
  return suspects;
}

/** Share of the weight on each target before anything was done. */
export function sharesOf(suspects: readonly Suspect[]): Map<string, number> {
  const total = suspects.reduce((sum, s) => sum + s.weight, 0);
  const shares = new Map<string, number>();
  for (const s of suspects) shares.set(s.at, (shares.get(s.at) ?? 0) + s.weight / total);
  return shares;
}

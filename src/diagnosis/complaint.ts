/** Evidence number 0: which suspects would make the machine do what the operator complains of. */

import {
  complaintSteps,
  type JobSpec,
  matches,
  noticed,
  operatorZone,
  Rig,
  type Symptom,
  tryOut,
} from '../job/index.ts';
import type { Model } from '../machine/index.ts';
import { hiddenControls, type SuspectFamily, suspectFamilies } from './suspects.ts';
import { Traffic } from './traffic.ts';

/** One suspect: a family over the degrees that explain the complaint. A few rigs bound what it predicts. */
export interface Suspect {
  id: string;
  at: string;
  mode: string;
  weight: number;
  cures: string[];
  /** Rigs at the interval's ends as they arrive; one where there is no degree. */
  ends: Rig[];
}

/** How finely time is cut while watching for something that must not be seen, ms. */
const SLICE_MS = 50;

/** The arrival of a suspect's machine: the job's, but with hidden controls as the suspect says. */
function arrivalOf(model: Model, job: JobSpec, family: SuspectFamily): JobSpec['arrival'] {
  const usual = Object.fromEntries(hiddenControls(model.book).map((c) => [c.id, c.initial]));
  return { ...job.arrival, controls: { ...job.arrival.controls, ...usual, ...family.controls } };
}

/** All suspects that explain the complaint. Pure: the same job gives the same list in the same order. */
export function suspectsOf(model: Model, job: JobSpec): Suspect[] {
  const traffic = new Traffic(model, job);
  return suspectFamilies(model)
    .filter((family) => traffic.matters(family))
    .flatMap((family) => explain(model, job, family, traffic));
}

function explain(model: Model, job: JobSpec, family: SuspectFamily, traffic: Traffic): Suspect[] {
  const arrival = arrivalOf(model, job, family);
  const rigAt = (ohms: number) => Rig.arriving(model, family.faults(ohms), arrival);
  const shown = (rig: Rig, ohms: number): Verdict => {
    if (job.arrival.regions !== undefined && !wouldLeave(model, job, family, ohms, arrival)) return 'other';
    for (const symptom of job.complaint) {
      const verdict = couldShow(rig, symptom);
      if (verdict !== 'shows') return verdict;
    }
    return 'shows';
  };
  const { severities } = family;
  if (severities.length === 0) {
    const rig = rigAt(0);
    return shown(rig, 0) === 'shows' ? [suspect(family, family.id, family.weight, [rig])] : [];
  }
  // From the worst downward, until a degree can't be told from a sound machine: the milder ones can't either.
  const found: { rig: Rig; shows: boolean }[] = [];
  for (const ohms of [...severities].reverse()) {
    const rig = rigAt(ohms);
    const verdict = shown(rig, ohms);
    found.unshift({ rig, shows: verdict === 'shows' });
    if (verdict === 'denied' || (verdict === 'other' && !denies(job) && traffic.likeSound(rig))) break;
  }
  const shares = found.filter((degree) => degree.shows).map((degree) => degree.rig);
  if (shares.length === 0) return [];
  const weight = (family.weight * shares.length) / severities.length;
  return [suspect(family, family.id, weight, endsOf(shares))];
}

/** Would this suspect have left the machine as it was found (a fuse blown), had all been whole when it was tried? */
function wouldLeave(
  model: Model,
  job: JobSpec,
  family: SuspectFamily,
  ohms: number,
  arrival: JobSpec['arrival'],
): boolean {
  const { regions, ...whole } = arrival;
  const rig = Rig.arriving(model, family.faults(ohms), whole);
  const found = Object.entries(regions ?? {});
  // The part itself may have failed the same way.
  if (found.every(([region]) => family.at === region)) return true;
  return job.complaint.some((symptom) => {
    const after = rig.copy();
    after.run(complaintSteps(after, symptom));
    return found.every(([region, state]) => after.world.stateOf(region) === state);
  });
}

/** The mildest, a middle and the worst degree bound what the whole range predicts. */
function endsOf(rigs: Rig[]): Rig[] {
  return rigs.length <= 2 ? rigs : [rigs[0], rigs[Math.floor(rigs.length / 2)], rigs[rigs.length - 1]];
}

/** What a trial said: the complaint; the very thing that it denies; or something else. */
type Verdict = 'shows' | 'denied' | 'other';

/** A complaint that something does not happen: where the worst degree lets it happen, the milder ones do too. */
const denies = (job: JobSpec): boolean => job.complaint.every((symptom) => symptom.missing.length > 0);

function suspect(family: SuspectFamily, id: string, weight: number, ends: Rig[]): Suspect {
  const cures = family.faults(family.severities[0] ?? 0).flatMap((f) => f.cures);
  return { id, at: family.at, mode: family.mode, weight, cures, ends };
}

/** Like `shows`, but given up as soon as something is noticed that the complaint denies. */
function couldShow(rig: Rig, symptom: Symptom): Verdict {
  const verdict = (codes: readonly string[]): Verdict => (matches(symptom, codes) ? 'shows' : 'other');
  if (symptom.missing.length === 0) return verdict(tryOut(rig, symptom).codes);
  const zone = operatorZone(rig.world.model.book);
  let denied = false;
  const seen = tryOut(rig, symptom, SLICE_MS, (copy) => {
    denied = noticed(copy.world, zone).some((code) => symptom.missing.includes(code));
    return denied;
  });
  return denied ? 'denied' : verdict(seen.codes);
}

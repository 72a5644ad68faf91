/** Evidence number 0: which suspects would make the machine do what the operator complains of. */

import { complaintSteps, type JobSpec, matches, Rig, type Symptom, tryOut } from '../job/index.ts';
import type { Model } from '../machine/index.ts';
import { Chains } from './chains.ts';
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

/** The arrival of a suspect's machine: the job's, but with hidden controls as the suspect says. */
function arrivalOf(model: Model, arrival: JobSpec['arrival'], family: SuspectFamily): JobSpec['arrival'] {
  const usual = Object.fromEntries(hiddenControls(model.book).map((c) => [c.id, c.initial]));
  return { ...arrival, controls: { ...arrival.controls, ...usual, ...family.controls } };
}

/** All suspects that explain the complaint. Pure: the same job gives the same list in the same order. */
export function suspectsOf(model: Model, job: JobSpec): Suspect[] {
  const enquiry = new Enquiry(model, job);
  return suspectFamilies(model).flatMap((family) => enquiry.explain(family));
}

/** What came of trying one degree of a family. */
interface Answer {
  verdict: Verdict;
  /** It can't be told from a sound machine, so that milder degrees can't either. */
  last: boolean;
}

/** Tries the complaint on family after family; what was tried already is not tried again. */
class Enquiry {
  private readonly model: Model;
  private readonly job: JobSpec;
  private readonly traffic: Traffic;
  private readonly chains: Chains;
  private readonly answers = new Map<string, Answer>();
  private readonly mattering = new Map<string, boolean>();

  constructor(model: Model, job: JobSpec) {
    this.model = model;
    this.job = job;
    this.traffic = new Traffic(model, job);
    this.chains = new Chains(model);
  }

  explain(family: SuspectFamily): Suspect[] {
    const { severities } = family;
    if (!this.matters(family, severities[severities.length - 1] ?? 0)) return [];
    if (severities.length === 0) {
      return this.ask(family, 0).verdict === 'shows'
        ? [suspect(family, family.weight, [this.rigOf(family, 0, this.job)])]
        : [];
    }
    // From the worst downward.
    const shares: number[] = [];
    for (const ohms of [...severities].reverse()) {
      const { verdict, last } = this.ask(family, ohms);
      if (verdict === 'shows') shares.unshift(ohms);
      if (last) break;
    }
    if (shares.length === 0) return [];
    const weight = (family.weight * shares.length) / severities.length;
    return [
      suspect(
        family,
        weight,
        endsOf(shares).map((ohms) => this.rigOf(family, ohms, this.job)),
      ),
    ];
  }

  private matters(family: SuspectFamily, ohms: number): boolean {
    const name = this.chains.nameOf(family, ohms);
    const known = this.mattering.get(name);
    if (known !== undefined) return known;
    const matters = this.traffic.matters(family, ohms);
    this.mattering.set(name, matters);
    return matters;
  }

  private ask(family: SuspectFamily, ohms: number): Answer {
    const name = `${this.chains.nameOf(family, ohms)} ${isFound(this.job, family)}`;
    const known = this.answers.get(name);
    if (known !== undefined) return known;
    const answer = this.tryDegree(family, ohms);
    this.answers.set(name, answer);
    return answer;
  }

  private tryDegree(family: SuspectFamily, ohms: number): Answer {
    const { job } = this;
    if (!isFound(job, family) && !this.matters(family, ohms)) return { verdict: 'other', last: true };
    if (!this.wouldLeave(family, ohms)) return this.other(family, ohms, new Map());
    const rig = this.rigOf(family, ohms, job);
    const heard: Heard = new Map();
    for (const symptom of job.complaint) {
      const verdict = couldShow(rig, symptom, heard);
      if (verdict === 'denied') return { verdict, last: true };
      if (verdict === 'other') return this.other(family, ohms, heard);
    }
    return { verdict: 'shows', last: false };
  }

  /** A complaint that something does not happen: where the worst degree lets it happen, the milder ones do too. */
  private other(family: SuspectFamily, ohms: number, heard: Heard): Answer {
    const { job, traffic } = this;
    const denies = job.complaint.every((symptom) => symptom.missing.length > 0);
    const codesOf = (symptom: Symptom) => heard.get(symptom) ?? tryOut(this.rigOf(family, ohms, job), symptom).codes;
    return { verdict: 'other', last: !denies && traffic.likeSound(codesOf) };
  }

  private rigOf(family: SuspectFamily, ohms: number, { arrival }: Pick<JobSpec, 'arrival'>): Rig {
    return Rig.arriving(this.model, family.faults(ohms), arrivalOf(this.model, arrival, family));
  }

  /** Would this suspect have left the machine as it was found (a fuse blown), had all been whole when it was tried? */
  private wouldLeave(family: SuspectFamily, ohms: number): boolean {
    const { job } = this;
    const { regions, ...whole } = job.arrival;
    if (regions === undefined || isFound(job, family)) return true;
    const rig = this.rigOf(family, ohms, { arrival: whole });
    const found = Object.entries(regions);
    return job.complaint.some((symptom) => {
      const after = rig.copy();
      after.run(complaintSteps(after, symptom));
      return found.every(([region, state]) => after.world.stateOf(region) === state);
    });
  }
}

/** The part that was found out of order may have failed by itself. */
const isFound = ({ arrival }: JobSpec, family: SuspectFamily): boolean =>
  arrival.regions !== undefined && Object.keys(arrival.regions).every((region) => family.at === region);

/** The mildest, a middle and the worst degree bound what the whole range predicts. */
function endsOf(degrees: number[]): number[] {
  const { length } = degrees;
  return length <= 2 ? degrees : [degrees[0], degrees[Math.floor(length / 2)], degrees[length - 1]];
}

/** What a trial said: the complaint; the very thing that it denies; or something else. */
type Verdict = 'shows' | 'denied' | 'other';

/** What was noticed in trials that went to their end. */
type Heard = Map<Symptom, readonly string[]>;

function suspect(family: SuspectFamily, weight: number, ends: Rig[]): Suspect {
  const cures = family.faults(family.severities[0] ?? 0).flatMap((f) => f.cures);
  return { id: family.id, at: family.at, mode: family.mode, weight, cures, ends };
}

/** As `shows` judges it, but given up as soon as something is seen that the complaint denies. */
function couldShow(rig: Rig, symptom: Symptom, heard: Heard): Verdict {
  const isDenied = (codes: readonly string[]): boolean => codes.some((code) => symptom.missing.includes(code));
  const { codes } = tryOut(rig, symptom, (_, soFar) => isDenied(soFar.codes));
  if (isDenied(codes)) return 'denied';
  heard.set(symptom, codes);
  return matches(symptom, codes) ? 'shows' : 'other';
}

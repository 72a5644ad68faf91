/** Proof and parts: how sure did the evidence make each repair when it was done? */
import type { Belief } from '../diagnosis/index.ts';
import type { Attempt, Record as Done } from '../job/index.ts';
import type { Finding } from './finding.ts';
import type { Rubric } from './rubric.ts';

export interface RepairReview {
  proofPoints: number;
  partsPoints: number;
  findings: Finding[];
}

export function reviewRepairs(attempt: Attempt, belief: Belief, rubric: Rubric): RepairReview {
  const findings: Finding[] = [];
  const right = new Set(attempt.job.faults.map((f) => f.at));
  let proof: number | null = null;
  let partsLost = 0;
  const mended = new Set<string>();
  const renewed = new Set<string>();
  for (const record of attempt.records) {
    const { action } = record.entry;
    if (action.do !== 'repair') continue;
    if (followsFrom(attempt, action.target, action.verb)) {
      // The first one is due. Another, with nothing mended since, only proves what blew the one before it.
      if (renewed.has(action.target) && action.verb === 'fuse') {
        const lost = rubric.weights.parts * rubric.needlessShare;
        partsLost += lost;
        const params = { target: action.target, verb: action.verb };
        const { index, timeMs } = record.entry;
        findings.push({ code: 'fuse-again', criterion: 'parts', entry: index, timeMs, lost, params });
      }
      renewed.add(action.target);
      continue;
    }
    const sure = Math.max(
      belief.mends(record.entry.index, action.target, action.verb),
      targetShare(belief, record, action.target),
    );
    const cures =
      right.has(action.target) &&
      attempt.job.faults.some((f) => f.at === action.target && f.cures.includes(action.verb));
    const params = { target: action.target, verb: action.verb, sure: Math.round(sure * 100) };
    const at = { entry: record.entry.index, timeMs: record.entry.timeMs, params };
    if (sure < threshold(record, rubric) && !mended.has(action.target)) {
      const lost = rubric.weights.parts * rubric.needlessShare;
      partsLost += lost;
      findings.push({ code: cures ? 'repair-lucky' : 'repair-needless', criterion: 'parts', lost, ...at });
    }
    if (cures && proof === null) {
      proof = sure;
      const share = rubric.proof.find(([from]) => sure >= from)?.[1] ?? 0;
      const lost = Math.round(rubric.weights.proof * (1 - share) * 10) / 10;
      findings.push({ code: lost > 0 ? 'repair-unproved' : 'proved', criterion: 'proof', lost, ...at });
    }
    mended.add(action.target);
    if (cures) renewed.clear();
  }
  if (attempt.job.faults.length === 0) return withoutFault(attempt, belief, rubric, findings, partsLost);
  if (proof === null)
    findings.push({
      code: 'not-mended',
      criterion: 'proof',
      entry: null,
      timeMs: Number.MAX_SAFE_INTEGER,
      lost: rubric.weights.proof,
      params: {},
    });
  const share = proof === null ? 0 : (rubric.proof.find(([from]) => (proof ?? 0) >= from)?.[1] ?? 0);
  return {
    proofPoints: rubric.weights.proof * share,
    partsPoints: Math.max(0, rubric.weights.parts - partsLost),
    findings,
  };
}

/** Work that the job itself calls for besides the cause: a new fuse for one that blew, protecting a mended loom. */
function followsFrom(attempt: Attempt, target: string, verb: string): boolean {
  const { job } = attempt;
  if (verb === 'fuse' && job.arrival.regions?.[target] === 'blown') return true;
  return verb === 'reroute' && job.faults.some((f) => f.at === target);
}

/** Share of the probability on a target by any way of failing: a pin that is surely bad may be cleaned or renewed. */
const targetShare = (belief: Belief, record: Done, target: string): number =>
  belief.steps[record.entry.index].before.get(target) ?? 0;

function threshold(record: Done, rubric: Rubric): number {
  const { usual, cheap, cheapMinutes, cheapPrice } = rubric.justified;
  const small = record.cost.tenths <= cheapMinutes * 10 && record.cost.price <= cheapPrice;
  return small ? cheap : usual;
}

/** Nothing was broken: the verdict takes the place of the repair. */
function withoutFault(
  attempt: Attempt,
  belief: Belief,
  rubric: Rubric,
  findings: Finding[],
  partsLost: number,
): RepairReview {
  const verdict = attempt.records.find((r) => r.entry.action.do === 'finish');
  const cause = attempt.job.causes[0]?.at ?? '';
  const before = verdict === undefined ? undefined : belief.steps[verdict.entry.index].before;
  const verified = attempt.records.some((r) => r.seen.codes.includes('complaint-gone'));
  const sure = verified ? 1 : (before?.get(cause) ?? 0);
  const share = rubric.proof.find(([from]) => sure >= from)?.[1] ?? 0;
  const lost = Math.round(rubric.weights.proof * (1 - share) * 10) / 10;
  const params = { target: cause, verb: 'explain', sure: Math.round(sure * 100) };
  findings.push({
    code: lost > 0 ? 'repair-unproved' : 'proved',
    criterion: 'proof',
    entry: verdict?.entry.index ?? null,
    timeMs: verdict?.entry.timeMs ?? Number.MAX_SAFE_INTEGER,
    lost,
    params,
  });
  return {
    proofPoints: rubric.weights.proof * share,
    partsPoints: Math.max(0, rubric.weights.parts - partsLost),
    findings,
  };
}

/** Safety: was each precaution in place when it was needed? */
import type { Attempt } from '../job/index.ts';
import type { Finding } from './finding.ts';
import type { Rubric } from './rubric.ts';

export interface SafetyReview {
  points: number;
  critical: boolean;
  findings: Finding[];
}

/** Each check counts once: the second time is the same habit. A blown jack fuse and ohms on a live circuit count too. */
export function reviewSafety(attempt: Attempt, rubric: Rubric): SafetyReview {
  const weight = rubric.weights.safety;
  const each = weight * rubric.lapseShare;
  const findings: Finding[] = [];
  const seen = new Set<string>();
  let critical = false;
  const lose = (
    check: string,
    code: Finding['code'],
    record: Attempt['records'][number],
    params: Finding['params'],
  ): void => {
    if (seen.has(check)) return;
    seen.add(check);
    findings.push({
      code,
      criterion: 'safety',
      entry: record.entry.index,
      timeMs: record.entry.timeMs,
      lost: each,
      params,
    });
  };
  for (const record of attempt.records) {
    for (const lapse of record.lapses) {
      critical ||= lapse.critical;
      const params = { check: lapse.check, missing: lapse.missing.join(' ') };
      lose(lapse.check, lapse.critical ? 'critical-missing' : 'precaution-missing', record, params);
    }
    if (record.seen.display?.live) lose('ohms-live', 'ohms-live', record, {});
    if (record.seen.codes.includes('jack-fuse-blown')) lose('jack-fuse', 'jack-fuse', record, {});
  }
  if (findings.length === 0) {
    findings.push({ code: 'safe', criterion: 'safety', entry: null, timeMs: 0, lost: 0, params: {} });
  }
  // More than there are points to lose are lost in equal shares.
  const share = Math.min(each, weight / Math.max(1, seen.size));
  if (seen.size > 0) for (const finding of findings) finding.lost = Math.round(share * 10) / 10;
  return { points: Math.max(0, weight - each * seen.size), critical, findings };
}

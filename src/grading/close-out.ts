/** Close-out: repair verified in the state of the complaint, everything put back, cause written up truly. */
import { type Attempt, isSetByHand } from '../job/index.ts';
import type { Finding } from './finding.ts';
import type { Rubric } from './rubric.ts';

export interface CloseOutReview {
  points: number;
  findings: Finding[];
}

export function reviewCloseOut(attempt: Attempt, rubric: Rubric): CloseOutReview {
  const weight = rubric.weights.closeOut;
  const parts = rubric.closeOut;
  const findings: Finding[] = [];
  let points = 0;
  const score = (
    ok: boolean,
    share: number,
    right: Finding['code'],
    wrong: Finding['code'],
    params: Finding['params'] = {},
  ): void => {
    const worth = Math.round(weight * share * 10) / 10;
    points += ok ? worth : 0;
    findings.push({
      code: ok ? right : wrong,
      criterion: 'closeOut',
      entry: null,
      timeMs: Number.MAX_SAFE_INTEGER,
      lost: ok ? 0 : worth,
      params,
    });
  };
  const after = sinceLastRepair(attempt);
  const verified = after.some((r) => r.seen.codes.includes('complaint-gone'));
  score(verified, parts.verified, 'verified', 'not-verified');
  const interlocks = after.some((r) => r.seen.codes.includes('interlocks-hold'));
  if (!interlocks) score(false, parts.interlocks, 'verified', 'interlocks-not-tried');
  else points += weight * parts.interlocks;
  const open = standingOpen(attempt);
  if (open.length > 0) score(false, parts.closed, 'verified', 'left-open', { what: open.join(' ') });
  else points += weight * parts.closed;
  const written = lastWriteUp(attempt);
  const true_ = written !== null && attempt.job.causes.some((c) => c.at === written.cause && c.mode === written.mode);
  const place = written !== null && attempt.job.causes.some((c) => c.at === written.cause);
  if (written === null) score(false, parts.writeUp, 'cause-right', 'no-write-up');
  else if (true_ || !place)
    score(true_, parts.writeUp, 'cause-right', 'cause-wrong', { cause: written.cause, mode: written.mode });
  else {
    // The right place with another name for how it failed: half of it is true.
    points += (weight * parts.writeUp) / 2;
    const lost = Math.round(weight * parts.writeUp * 5) / 10;
    findings.push({
      code: 'cause-wrong',
      criterion: 'closeOut',
      entry: null,
      timeMs: Number.MAX_SAFE_INTEGER,
      lost,
      params: { cause: written.cause, mode: written.mode },
    });
  }
  return { points, findings };
}

function sinceLastRepair(attempt: Attempt): Attempt['records'] {
  const last = attempt.records.map((r) => r.entry.action.do).lastIndexOf('repair');
  return attempt.records.slice(last + 1);
}

/** What is still open, off, out or left at the machine. */
export function standingOpen(attempt: Attempt): string[] {
  const { bench, model, rig } = attempt;
  const left = bench.precautions.filter((id) => {
    const precaution = model.book.precautions.find((p) => p.id === id);
    return precaution !== undefined && isSetByHand(precaution) && (precaution.removed ?? false);
  });
  const off = model.book.controls.filter(
    (c) => c.disconnects !== undefined && rig.world.controlOf(c.id) === c.disconnects,
  );
  return [
    ...bench.opened,
    ...bench.unplugged,
    ...bench.lifted,
    ...bench.pulled,
    ...bench.exchanged.map(([a]) => a),
    ...left,
    ...off.map((c) => c.part),
  ];
}

function lastWriteUp(attempt: Attempt): { cause: string; mode: string } | null {
  for (let i = attempt.records.length - 1; i >= 0; i--) {
    const { action } = attempt.records[i].entry;
    if (action.do === 'writeUp') return action;
  }
  return null;
}

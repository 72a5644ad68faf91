/** What the proof of a repair does, and what must be in place before the key turns: said before it is pressed. */
import { inCab } from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { doneText } from '../words/precautions.ts';
import { t } from '../words/words.ts';

export const VERIFY_LINE = 'verify-line';

export function VerifyLine({ session, id = VERIFY_LINE }: { session: Session; id?: string }) {
  if (!inCab(session.book, session.bench.zone)) return null;
  const needs = neededToCrank(session).map((id) => doneText(session.model, id).replace(/\.$/, ''));
  return (
    <p class="hint" id={id}>
      {t('here.verifyLine', { needs: needs.map((need) => need.slice(0, 1).toLowerCase() + need.slice(1)).join('; ') })}
    </p>
  );
}

/** The first of each group of precautions that the book asks for in this place before the key goes to start. */
export function neededToCrank({ book, bench }: Session): string[] {
  const checks = book.checks.filter(
    (check) => check.on === 'crank' && (check.zones === undefined || check.zones.includes(bench.zone)),
  );
  return checks.flatMap((check) => check.needs.flatMap(([first]) => (first === undefined ? [] : [first])));
}

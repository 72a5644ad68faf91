/** The slip under the drawing: what was just seen, heard and read, or why something could not be done. Spoken, too. */
import type { Record } from '../../job/index.ts';
import { ActButton } from '../parts/act-button.tsx';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { shelf } from '../state/store.ts';
import { actionName } from '../words/actions.ts';
import { pointName } from '../words/names.ts';
import { refusalText, remedyFor } from '../words/refusal.ts';
import { displayLine, seenLines } from '../words/seen.ts';
import { t } from '../words/words.ts';

export function Slip({ session }: { session: Session }) {
  const { outcome, saved } = useObservable(session.view);
  const { lasting, differs } = useObservable(shelf);
  const lines = outcome.kind === 'done' ? outcome.records.flatMap((r) => linesOf(session, r)) : [];
  const warnings = outcome.kind === 'done' ? outcome.records.flatMap((r) => calls(session, r)) : [];
  const refusal = outcome.kind === 'refused' ? outcome.refusal : null;
  const remedy = refusal === null ? null : remedyFor(session, refusal);
  const spent = outcome.kind === 'done' ? outcome.records.reduce((sum, r) => sum + r.cost.tenths, 0) : 0;
  return (
    <div class="slip-place">
      {lasting ? null : <p class="slip warn">{t('app.notLasting')}</p>}
      {saved ? null : <p class="slip warn">{t('app.notSaved')}</p>}
      {differs ? <p class="slip warn">{t('app.differs')}</p> : null}
      <div class={refusal === null ? 'slip' : 'slip refused'} data-empty={lines.length === 0 && refusal === null && warnings.length === 0}>
        <div aria-live="polite" aria-atomic="true" class="slip-text">
          {lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
          {refusal === null ? null : (
            <p>
              <b>{t('slip.refused')}</b> {refusalText(session, refusal)}
            </p>
          )}
          {warnings.map((line) => (
            <p key={line} class="call">
              {line}
            </p>
          ))}
        </div>
        {remedy === null ? null : <ActButton session={session} action={remedy} kind="work" />}
        {spent > 0 ? <span class="act-cost">{t('slip.spent', { minutes: minutes(spent) })}</span> : null}
      </div>
    </div>
  );
}

function linesOf(session: Session, record: Record): string[] {
  const reading = displayLine(session.model, record, (point) => pointName(session.model, point));
  const seen = seenLines(session.model, session.job, record);
  const quiet = reading !== null && record.entry.action.do !== 'operate';
  const lines = [...(reading === null ? [] : [reading]), ...(quiet && record.seen.codes.length === 0 ? [] : seen)];
  const silent = ['lead', 'read', 'dial', 'jack', 'start', 'instrument', 'mark', 'note'];
  return lines.length === 0 && !silent.includes(record.entry.action.do) ? [actionName(session, record.entry.action)] : lines;
}

/** A critical lapse is called out at once, as anybody in a shop would; the others are talked over in the debrief. */
function calls({ book }: Session, record: Record): string[] {
  return record.lapses
    .filter((lapse) => lapse.critical)
    .map((lapse) => {
      const check = book.checks.find((c) => c.id === lapse.check);
      const missing = lapse.missing.map((id) => book.precautions.find((p) => p.id === id)?.text ?? id);
      return t('slip.lead', { why: check?.why ?? missing.join(' ') });
    });
}

/** Where points went: the moment, what was done, what was known then and what would have been better. */
import type { Finding } from '../../grading/index.ts';
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { tryFrom } from '../state/store.ts';
import { resetUi } from '../state/ui.ts';
import { actionName } from '../words/actions.ts';
import { pointName } from '../words/names.ts';
import { displayLine } from '../words/seen.ts';
import { t } from '../words/words.ts';
import { findingText } from './finding-text.ts';

export function Findings({ session, findings }: { session: Session; findings: Finding[] }) {
  return (
    <section aria-labelledby="debrief-lost">
      <h2 id="debrief-lost">{t('debrief.lost')}</h2>
      {findings.length === 0 ? <p class="all-clear">{t('debrief.lostNone')}</p> : null}
      <ul class="findings">
        {findings.map((finding) => (
          <FindingRow
            key={`${finding.code}${finding.entry}${finding.params.check ?? ''}`}
            session={session}
            finding={finding}
          />
        ))}
      </ul>
    </section>
  );
}

function FindingRow({ session, finding }: { session: Session; finding: Finding }) {
  const { entry, lost, criterion } = finding;
  return (
    <li class="finding">
      <p class="finding-head">
        <b>{t(`debrief.${criterion}`)}</b>
        <span>{entry === null ? t('debrief.whole') : t('debrief.at', { minute: minuteOf(session, entry) })}</span>
        <span class="finding-lost">{t('debrief.lostPoints', { points: lost })}</span>
      </p>
      {entry === null ? null : <p class="finding-did">{whatWasDone(session, entry)}</p>}
      <p>{findingText(session, finding)}</p>
      {entry === null ? null : <TryFrom session={session} entry={entry} />}
    </li>
  );
}

function TryFrom({ session, entry }: { session: Session; entry: number }) {
  const again = async (): Promise<void> => {
    resetUi();
    const practice = await tryFrom(session, entry);
    location.hash = `#/shop/${practice.stored.id}`;
  };
  return (
    <button type="button" class="plain try-from" onClick={() => void again()}>
      {t('debrief.tryFrom')}
    </button>
  );
}

function minuteOf({ attempt }: Session, entry: number): string {
  return minutes(attempt.records.slice(0, entry + 1).reduce((sum, r) => sum + r.cost.tenths, 0));
}

function whatWasDone(session: Session, entry: number): string {
  const record = session.attempt.records[entry];
  if (record === undefined) return '';
  return displayLine(record, (point) => pointName(session.model, point)) ?? actionName(session, record.entry.action);
}

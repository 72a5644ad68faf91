/** Where points went: the moment, what was done, what was known then and what would have been better. */
import type { Finding } from '../../grading/index.ts';
import type { Session } from '../state/session.ts';
import { tryFrom } from '../state/store.ts';
import { resetUi } from '../state/ui.ts';
import { t } from '../words/words.ts';
import { adviceText, findingText } from './finding-text.ts';
import { minuteOf } from './moments.ts';

interface Props {
  session: Session;
  findings: Finding[];
}

export function Good({ session, findings }: Props) {
  return (
    <section aria-labelledby="debrief-good">
      <h2 id="debrief-good">{t('debrief.good')}</h2>
      {findings.length === 0 ? <p class="hint">{t('review.goodNone')}</p> : null}
      <ul class="good">
        {findings.map((finding) => (
          <li key={keyOf(finding)}>
            {finding.entry === null ? null : <Moment session={session} finding={finding} />}
            {findingText(session, finding)}
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Findings({ session, findings }: Props) {
  return (
    <section aria-labelledby="debrief-lost">
      <h2 id="debrief-lost">{t('debrief.lost')}</h2>
      {findings.length === 0 ? <p class="all-clear">{t('debrief.lostNone')}</p> : null}
      <ul class="findings">
        {findings.map((finding) => (
          <FindingRow key={keyOf(finding)} session={session} finding={finding} findings={findings} />
        ))}
      </ul>
    </section>
  );
}

const keyOf = ({ code, entry, params }: Finding): string => `${code}${entry}${params.check ?? ''}`;

interface RowProps {
  session: Session;
  finding: Finding;
  findings: Finding[];
}

function FindingRow({ session, finding, findings }: RowProps) {
  const { entry, lost, criterion } = finding;
  const advice = adviceText(session, finding);
  return (
    <li class="finding" id={idOf(finding)} tabIndex={-1}>
      <p class="finding-head">
        <b>{t(`review.criteria.${criterion}`)}</b>
        <span class="finding-lost">{t('debrief.lostPoints', { points: lost })}</span>
      </p>
      <p>
        <Moment session={session} finding={finding} />
        {findingText(session, finding)}
      </p>
      {advice === null ? null : (
        <p class="finding-better">
          <b>{t('review.better')}</b> {advice}{' '}
          {finding.code === 'over-par' ? <ToldNothing session={session} findings={findings} /> : null}
        </p>
      )}
      {entry === null ? null : <TryFrom session={session} entry={entry} />}
    </li>
  );
}

const idOf = (finding: Finding): string => `finding-${keyOf(finding)}`;

/** Which steps those were: each leads to what is said of it. */
function ToldNothing({ session, findings }: { session: Session; findings: Finding[] }) {
  const steps = findings.filter(
    ({ code, entry }) => entry !== null && (code === 'told-nothing' || code === 'asked-twice'),
  );
  if (steps.length === 0) return <>{t('review.advice.billNone')}</>;
  return (
    <span class="told-nothing">
      {t('review.advice.billSteps', { count: steps.length })}
      {steps.map((step) => (
        <button key={keyOf(step)} type="button" class="plain" onClick={() => lookUp(idOf(step))}>
          {t('debrief.at', { minute: minuteOf(session, step.entry ?? 0) })}
        </button>
      ))}
    </span>
  );
}

function lookUp(id: string): void {
  const row = document.getElementById(id);
  row?.scrollIntoView({ block: 'center' });
  row?.focus({ preventScroll: true });
}

function Moment({ session, finding: { entry } }: { session: Session; finding: Finding }) {
  return (
    <>
      <b class="moment">
        {entry === null ? t('review.atClose') : t('review.at', { minute: minuteOf(session, entry) })}
      </b>{' '}
    </>
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

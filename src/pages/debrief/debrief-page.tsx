/** The debrief of a closed attempt: what was right and the result first, then what it was, then how it went. */
import { useEffect } from 'preact/hooks';
import { billOf } from '../../job/index.ts';
import { Download } from '../clipboard/download.tsx';
import { useTitle } from '../parts/title.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { minutes, money } from '../state/settings.ts';
import { shelf } from '../state/store.ts';
import '../words/debrief-words.ts';
import { plain } from '../words/plain.ts';
import { t } from '../words/words.ts';
import { causeText } from './cause-text.ts';
import { Debrief } from './debrief.tsx';
import { useGrade } from './grading.ts';
import { Replay } from './replay.tsx';
import { Steps } from './steps.tsx';
import { Working } from './working.tsx';

export function DebriefPage({ session }: { session: Session }) {
  const { job, attempt, book, stored } = session;
  const { differs } = useObservable(shelf);
  const title = `${t('debrief.title')}: ${job.title}`;
  useTitle(title);
  // It comes up after the attempt was read from the store, when nothing has the focus.
  useEffect(() => document.getElementById('work')?.focus({ preventScroll: true }), []);
  const bill = money(billOf(book, attempt.tenths, attempt.price));
  const last = attempt.records.at(-1)?.entry.action;
  return (
    <main class="page debrief" id="work" tabIndex={-1} aria-label={title}>
      <h1>{title}</h1>
      <p class="lede">
        {t('debrief.closed', { minutes: minutes(attempt.tenths), bill })}{' '}
        {last?.do === 'finish' ? t('debrief.ending', { ending: t(`write.${last.ending}`) }) : ''}
      </p>
      {differs ? <p class="warn">{t('review.differs')}</p> : null}
      {stored.practice ? <p class="hint">{t('debrief.practice')}</p> : <Result session={session} />}
      <section class="review-lesson" aria-labelledby="debrief-lesson">
        <h2 id="debrief-lesson">{t('debrief.cause')}</h2>
        <p class="cause">{job.causes.slice(0, 1).map(({ at, mode }) => causeText(session.model, at, mode))}</p>
        <h2>{t('debrief.lesson')}</h2>
        <p class="lesson">{plain(session.model, job.lesson)}</p>
      </section>
      <Replay session={session} />
      <Steps session={session} />
      <p class="debrief-foot">
        <Download session={session} />
        <button type="button" class="plain" onClick={() => print()}>
          {t('debrief.print')}
        </button>
        <a class="plain" href={`#/job/${job.id}`}>
          {t('debrief.again')}
        </a>
      </p>
    </main>
  );
}

function Result({ session }: { session: Session }) {
  const { grading, retry } = useGrade(session);
  const grade = grading.state === 'done' ? grading.grade : null;
  return (
    <>
      {/* It comes long after the screen; whoever does not see it come is told. */}
      <p class="unseen" role="status">
        {grade === null ? '' : `${t(`debrief.${grade.result}`)}. ${t('debrief.total', { points: grade.total })}`}
      </p>
      <Graded session={session} grading={grading} retry={retry} />
    </>
  );
}

function Graded({ session, grading, retry }: ReturnType<typeof useGrade> & { session: Session }) {
  switch (grading.state) {
    case 'working':
      return <Working session={session} />;
    case 'failed':
      return (
        <p class="warn" role="alert">
          {t('debrief.workFailed')}{' '}
          <button type="button" class="plain" onClick={retry}>
            {t('debrief.retry')}
          </button>
        </p>
      );
    case 'done':
      return <Debrief session={session} grade={grading.grade} />;
  }
}

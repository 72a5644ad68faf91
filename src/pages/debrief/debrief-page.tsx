/** The debrief of a closed attempt: the result first, then what it was, then how it went. */
import { billOf } from '../../job/index.ts';
import { Download } from '../clipboard/download.tsx';
import type { Session } from '../state/session.ts';
import { minutes, money } from '../state/settings.ts';
import { modeName, targetName } from '../words/names.ts';
import { t } from '../words/words.ts';
import { Debrief } from './debrief.tsx';
import { useGrade } from './grading.ts';
import { Steps } from './steps.tsx';

export function DebriefPage({ session }: { session: Session }) {
  const { job, attempt, book, stored } = session;
  const bill = money(billOf(book, attempt.tenths, attempt.price));
  const last = attempt.records.at(-1)?.entry.action;
  return (
    <main class="page debrief" id="work" tabIndex={-1}>
      <h1>
        {t('debrief.title')}: {job.title}
      </h1>
      <p class="lede">
        {t('debrief.closed', { minutes: minutes(attempt.tenths), bill })}{' '}
        {last?.do === 'finish' ? t('debrief.ending', { ending: t(`write.${last.ending}`) }) : ''}
      </p>
      {stored.practice ? <p class="hint">{t('debrief.practice')}</p> : <Result session={session} />}
      <section aria-labelledby="debrief-lesson">
        <h2 id="debrief-lesson">{t('debrief.cause')}</h2>
        <p class="cause">
          {job.causes.slice(0, 1).map(({ at, mode }) => `${targetName(session.model, at)}: ${modeName(mode)}`)}
        </p>
        <h2>{t('debrief.lesson')}</h2>
        <p class="lesson">{job.lesson}</p>
      </section>
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
  switch (grading.state) {
    case 'working':
      return (
        <p class="working" role="status">
          {t('debrief.working')}
        </p>
      );
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

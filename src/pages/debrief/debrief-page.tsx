/** The debrief of a closed attempt. */
import { billOf } from '../../job/index.ts';
import { Download } from '../clipboard/download.tsx';
import type { Session } from '../state/session.ts';
import { minutes, money } from '../state/settings.ts';
import { modeName, targetName } from '../words/names.ts';
import { t } from '../words/words.ts';
import { Lapses } from './lapses.tsx';
import { Steps } from './steps.tsx';

export function DebriefPage({ session }: { session: Session }) {
  const { job, attempt, book } = session;
  const bill = money(billOf(book, attempt.tenths, attempt.price));
  const last = attempt.records.at(-1)?.entry.action;
  return (
    <main class="page debrief" id="work" tabIndex={-1}>
      <h1>
        {t('debrief.title')}: {job.title}
      </h1>
      <p class="lede">{t('debrief.closed', { minutes: minutes(attempt.tenths), bill })}</p>
      {last?.do === 'finish' ? <p>{t('debrief.ending', { ending: t(`write.${last.ending}`) })}</p> : null}
      <section>
        <h2>{t('debrief.cause')}</h2>
        <ul>
          {job.causes.map(({ at, mode }) => (
            <li key={at + mode}>
              {targetName(session.model, at)}: {modeName(mode)}
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>{t('debrief.lesson')}</h2>
        <p class="lesson">{job.lesson}</p>
      </section>
      <Lapses session={session} />
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

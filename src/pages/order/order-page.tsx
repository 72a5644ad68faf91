/** The work order as a sheet, with the button that takes the job. */
import type { JobSpec } from '../../job/index.ts';
import { catalog } from '../state/catalog.ts';
import { useObservable } from '../state/observable.ts';
import { minutes } from '../state/settings.ts';
import { latestOf, shelf, takeJob } from '../state/store.ts';
import { resetUi } from '../state/ui.ts';
import { t } from '../words/words.ts';
import { WorkOrder } from './work-order.tsx';

/** As many cautions as a work order has printed on it; all of them stand in the manual. */
const CAUTIONS = 4;

export function OrderPage({ job }: { job: JobSpec }) {
  const { attempts, ready } = useObservable(shelf);
  const { book } = catalog();
  const latest = latestOf(attempts, job.id);
  const take = async (): Promise<void> => {
    resetUi();
    const session = await takeJob(job);
    location.hash = `#/shop/${session.stored.id}`;
  };
  const cautions = book.manual.filter((s) => s.id.startsWith('caution-')).slice(0, CAUTIONS);
  return (
    <main class="page" id="work" tabIndex={-1}>
      <article class="order-sheet">
        <header>
          <p class="form-name">{t('order.title')}</p>
          <p class="form-number">{t('board.number', { number: job.id.replace(/^job-/, '') })}</p>
        </header>
        <h1>{job.title}</h1>
        <WorkOrder job={job} book={book} />
        <h2>{t('order.cautions')}</h2>
        <ul class="cautions">
          {cautions.map(({ id, title, text }) => (
            <li key={id}>
              <b>{title}.</b> {text.replace(`${title}. `, '')}
            </li>
          ))}
        </ul>
        <footer class="order-foot">
          {ready && latest !== undefined && !latest.ended ? (
            <a class="strong" href={`#/shop/${latest.id}`}>
              {t('order.goOn')}
            </a>
          ) : null}
          {latest?.ended === true ? (
            <a class="plain" href={`#/debrief/${latest.id}`}>
              {t('order.debrief')}
            </a>
          ) : null}
          <button
            type="button"
            class={latest === undefined ? 'strong' : 'plain'}
            disabled={!ready}
            onClick={() => void take()}
          >
            {latest === undefined ? t('order.take') : t('order.again')}
          </button>
          {latest === undefined ? null : (
            <p class="hint">{t(latest.ended ? 'board.done' : 'board.under', { minutes: minutes(latest.tenths) })}</p>
          )}
        </footer>
      </article>
    </main>
  );
}

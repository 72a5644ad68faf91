/** The work order as a sheet, with the button that takes the job. */
import type { JobSpec } from '../../job/index.ts';
import { useTitle } from '../parts/title.ts';
import { catalog } from '../state/catalog.ts';
import { type JobRecord, jobRecord } from '../state/job-record.ts';
import { useObservable } from '../state/observable.ts';
import { minutes } from '../state/settings.ts';
import { shelf, takeJob } from '../state/store.ts';
import { resetUi } from '../state/ui.ts';
import { plain } from '../words/plain.ts';
import { recordText, resultText } from '../words/results.ts';
import { t } from '../words/words.ts';
import { WorkOrder } from './work-order.tsx';

/** As many cautions as a work order has printed on it; all of them stand in the manual. */
const CAUTIONS = 4;

export function OrderPage({ job }: { job: JobSpec }) {
  const { attempts, ready } = useObservable(shelf);
  const { model } = catalog();
  const record = jobRecord(attempts, job.id);
  const latest = record?.latest;
  const title = `${t('order.title')}: ${job.title}`;
  useTitle(title);
  const take = async (): Promise<void> => {
    resetUi();
    const session = await takeJob(job);
    location.hash = `#/shop/${session.stored.id}`;
  };
  const goOn =
    ready && latest !== undefined && !latest.ended ? (
      <a class="strong" href={`#/shop/${latest.id}`}>
        {t('order.goOn')}
      </a>
    ) : null;
  const cautions = model.book.manual.filter((s) => s.id.startsWith('caution-')).slice(0, CAUTIONS);
  return (
    <main class="page" id="work" tabIndex={-1} aria-label={title}>
      <article class="order-sheet">
        <header>
          <p class="form-name">{t('order.title')}</p>
          <p class="form-number">{t('board.number', { number: job.id.replace(/^job-/, '') })}</p>
        </header>
        <h1>{job.title}</h1>
        {goOn === null ? null : <p class="order-go-on">{goOn}</p>}
        <WorkOrder job={job} model={model} />
        <h2>{t('order.cautions')}</h2>
        <ul class="cautions">
          {cautions.map(({ id, title, text }) => (
            <li key={id}>
              <b>{plain(model, title)}</b>
              {plain(model, text).slice(plain(model, title).length)}
            </li>
          ))}
        </ul>
        <p class="order-rule">{t('order.rule')}</p>
        <footer class="order-foot">
          {goOn}
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
          {record === null ? null : <p class="hint">{`${stateText(record)} · ${recordText(record)}`}</p>}
        </footer>
      </article>
    </main>
  );
}

function stateText({ latest }: JobRecord): string {
  if (!latest.ended) return t('board.under', { minutes: minutes(latest.tenths) });
  return latest.result === undefined ? t('board.done', { minutes: minutes(latest.tenths) }) : resultText(latest.result);
}

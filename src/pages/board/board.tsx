/** The job board: what came in, by band, and how far each is. */
import type { JobSpec } from '../../job/index.ts';
import type { StoredResult } from '../../storage/attempts.ts';
import { useTitle } from '../parts/title.ts';
import { catalog } from '../state/catalog.ts';
import { type JobRecord, jobRecord } from '../state/job-record.ts';
import { useObservable } from '../state/observable.ts';
import { minutes } from '../state/settings.ts';
import { shelf } from '../state/store.ts';
import { recordText, resultText } from '../words/results.ts';
import { t } from '../words/words.ts';
import { ReadBack } from './read-back.tsx';

const BANDS = [1, 2, 3, 4] as const;

export function Board() {
  const { lasting, ready } = useObservable(shelf);
  const { jobs } = catalog();
  useTitle(t('board.title'));
  return (
    <main class="page" id="work" tabIndex={-1} aria-label={t('board.title')}>
      <h1>{t('board.title')}</h1>
      <p class="lede">{t('board.intro')}</p>
      {ready && !lasting ? <p class="warn">{t('app.notLasting')}</p> : null}
      {BANDS.map((band) => (
        <Band key={band} band={band} jobs={jobs.filter((job) => job.band === band)} />
      ))}
      <ReadBack />
    </main>
  );
}

function Band({ band, jobs }: { band: (typeof BANDS)[number]; jobs: JobSpec[] }) {
  if (jobs.length === 0) return null;
  return (
    <section aria-labelledby={`band-${band}`}>
      <h2 id={`band-${band}`}>{t(`board.band${band}`)}</h2>
      <ul class="cards">
        {jobs.map((job) => (
          <Card key={job.id} job={job} />
        ))}
      </ul>
    </section>
  );
}

function Card({ job }: { job: JobSpec }) {
  const { attempts } = useObservable(shelf);
  const record = jobRecord(attempts, job.id);
  const stamp = stampOf(record);
  return (
    <li>
      <a class={`card card-${stamp.kind}`} href={`#/job/${job.id}`}>
        <span class="card-number">{t('board.number', { number: job.id.replace(/^job-/, '') })}</span>
        <span class="card-title">{job.title}</span>
        <span class="card-hours">{t('board.hours', { hours: job.workOrder.hours })}</span>
        <span class={`stamp stamp-${stamp.kind}`}>{stamp.text}</span>
        {record === null ? null : <span class="card-record">{recordText(record)}</span>}
      </a>
    </li>
  );
}

interface Stamp {
  kind: 'new' | 'under' | 'done' | StoredResult['result'];
  text: string;
}

function stampOf(record: JobRecord | null): Stamp {
  if (record === null) return { kind: 'new', text: t('board.new') };
  const { latest } = record;
  if (!latest.ended) return { kind: 'under', text: t('board.goOn', { minutes: minutes(latest.tenths) }) };
  const { result } = latest;
  return result === undefined
    ? { kind: 'done', text: t('board.done', { minutes: minutes(latest.tenths) }) }
    : { kind: result.result, text: resultText(result) };
}

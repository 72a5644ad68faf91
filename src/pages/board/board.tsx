/** The job board: what came in, by band, and how far each is. */
import type { JobSpec } from '../../job/index.ts';
import { catalog } from '../state/catalog.ts';
import { useObservable } from '../state/observable.ts';
import { minutes } from '../state/settings.ts';
import { latestOf, shelf } from '../state/store.ts';
import { t } from '../words/words.ts';
import { ReadBack } from './read-back.tsx';

const BANDS = [1, 2, 3, 4] as const;

export function Board() {
  const { lasting, ready } = useObservable(shelf);
  const { jobs } = catalog();
  return (
    <main class="page" id="work" tabIndex={-1}>
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
  const latest = latestOf(attempts, job.id);
  const state = latest === undefined ? 'new' : latest.ended ? 'done' : 'under';
  return (
    <li>
      <a class={`card card-${state}`} href={`#/job/${job.id}`}>
        <span class="card-number">{t('board.number', { number: job.id.replace(/^job-/, '') })}</span>
        <span class="card-title">{job.title}</span>
        <span class="card-hours">{t('board.hours', { hours: job.workOrder.hours })}</span>
        <span class={`stamp stamp-${state}`}>{t(`board.${state}`, { minutes: minutes(latest?.tenths ?? 0) })}</span>
      </a>
    </li>
  );
}

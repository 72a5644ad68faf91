/** All that was done, in order, with what it showed. */
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { isAnswered, seenLines } from '../words/seen.ts';
import { stopped, t } from '../words/words.ts';
import { didText } from './moments.ts';

export function Steps({ session }: { session: Session }) {
  const { attempt, model, job } = session;
  let tenths = 0;
  return (
    <section class="log" aria-labelledby="debrief-steps">
      <h2 id="debrief-steps">{t('debrief.steps')}</h2>
      <ol class="steps">
        {attempt.records.map((record) => {
          tenths += record.cost.tenths;
          const seen = isAnswered(record) ? seenLines(model, job, record) : [];
          return (
            <li key={record.entry.index}>
              <span class="note-minute">{t('debrief.step', { minute: minutes(tenths) })}</span>{' '}
              {stopped(didText(session, record.entry.index))}
              {seen.length === 0 ? null : <span class="note-seen"> {seen.map(stopped).join(' ')}</span>}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

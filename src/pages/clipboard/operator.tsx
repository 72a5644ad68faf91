/** The operator: questions, and the answers once they have been asked. */
import { ActButton } from '../parts/act-button.tsx';
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { plain } from '../words/plain.ts';
import { t } from '../words/words.ts';

export function Operator({ session }: { session: Session }) {
  const { job, book, attempt, model } = session;
  const asked = new Set(attempt.records.map(({ entry: { action } }) => (action.do === 'ask' ? action.question : '')));
  return (
    <>
      <p class="hint">{t('clip.operatorIntro', { minutes: minutes((book.costs.minutes.ask ?? 0) * 10) })}</p>
      <ul class="asks">
        {job.asks.map(({ id, question, answer }) => (
          <li key={id}>
            {asked.has(id) ? (
              <>
                <p class="ask-question">{question}</p>
                {/* What was pressed goes; the answer in its place takes the focus. */}
                <p
                  class="ask-answer"
                  role="note"
                  id={`answer-${id}`}
                  aria-labelledby={`answer-${id}`}
                  tabIndex={-1}
                  data-rest
                >
                  “{plain(model, answer)}”
                </p>
              </>
            ) : (
              <ActButton session={session} action={{ do: 'ask', question: id }} label={t('clip.ask', { question })} />
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

/** Precautions that are no longer in place, where the key is turned: the safety board may be folded in. */
import { isSetByHand } from '../../job/index.ts';
import { ActButton } from '../parts/act-button.tsx';
import { lapsedBy } from '../state/lapsed.ts';
import { lacksHelper } from '../state/needs-helper.ts';
import type { Session } from '../state/session.ts';
import { sinceText } from '../words/lapsed.ts';
import { doneText } from '../words/precautions.ts';
import { t } from '../words/words.ts';

export function LapsedLines({ session }: { session: Session }) {
  const lines = lapsedHere(session);
  if (lines.length === 0) return null;
  return (
    <ul class="lapsed-lines" aria-label={t('lapsed.title')}>
      {lines.map(({ id, since }) => {
        const done = doneText(session.model, id).replace(/\.$/, '');
        return (
          <li key={id}>
            <p>{t('lapsed.line', { done, since })}</p>
            <ActButton
              session={session}
              action={{ do: 'precaution', id, on: true }}
              label={t('lapsed.again', { done })}
              face={t('lapsed.button')}
            />
          </li>
        );
      })}
    </ul>
  );
}

/** What the turning of the key asks for and others have taken away; the rest stands on the safety board. */
export function lapsedHere(session: Session): { id: string; since: string }[] {
  const { book, attempt } = session;
  const { zone } = session.bench;
  const asked = new Set(
    book.checks.flatMap((c) => (c.on === 'crank' && (c.zones?.includes(zone) ?? true) ? c.needs.flat() : [])),
  );
  const open = book.precautions.filter((p) => asked.has(p.id) && isSetByHand(p) && !lacksHelper(session, p));
  return open.flatMap(({ id }) => {
    const by = lapsedBy(attempt.records, id);
    return by === null || by.entry.action.do === 'operate' || by.entry.action.do === 'verify'
      ? []
      : [{ id, since: sinceText(book, by) }];
  });
}

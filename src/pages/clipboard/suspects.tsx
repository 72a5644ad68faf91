/** What the student suspects: marked, and struck out. */
import type { Session } from '../state/session.ts';
import { targetName } from '../words/names.ts';
import { sentence, t } from '../words/words.ts';
import { TargetSearch } from './target-search.tsx';

export function Suspects({ session }: { session: Session }) {
  const { marked } = session.bench;
  const struck = struckOut(session);
  const mark = (target: string, suspect: boolean): void => {
    session.act({ do: 'mark', target, suspect });
  };
  return (
    <>
      <p class="hint">{t('clip.suspectsIntro')}</p>
      <TargetSearch
        model={session.model}
        label={t('clip.suspectsFind')}
        hint={t('clip.suspectsHint')}
        action={t('clip.mark')}
        onPick={(target) => mark(target, true)}
      />
      <h3>{t('clip.suspectsMarked')}</h3>
      {marked.length === 0 ? <p class="hint">{t('clip.suspectsNone')}</p> : null}
      <ul class="suspects">
        {marked.map((target) => (
          <li key={target}>
            <span>{sentence(targetName(session.model, target))}</span>
            <button
              type="button"
              class="plain"
              aria-label={t('act.unmark', { what: targetName(session.model, target) })}
              onClick={() => mark(target, false)}
            >
              {t('clip.strike')}
            </button>
          </li>
        ))}
      </ul>
      {struck.length === 0 ? null : <h3>{t('clip.suspectsStruck')}</h3>}
      <ul class="suspects struck">
        {struck.map((target) => (
          <li key={target}>
            <s>{sentence(targetName(session.model, target))}</s>
            <button
              type="button"
              class="plain"
              aria-label={t('act.mark', { what: targetName(session.model, target) })}
              onClick={() => mark(target, true)}
            >
              {t('clip.again')}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

function struckOut({ attempt, bench }: Session): string[] {
  const once = attempt.records.flatMap(({ entry: { action } }) => (action.do === 'mark' ? [action.target] : []));
  return [...new Set(once)].filter((target) => !bench.marked.includes(target));
}

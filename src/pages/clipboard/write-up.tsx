/** Complaint, cause, correction; what still stands open; and the honest ways to close a job. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Draft } from '../../storage/attempts.ts';
import { GrowingText } from '../parts/growing-text.tsx';
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { modeName, modesOf, targetName } from '../words/names.ts';
import { t, wordFor } from '../words/words.ts';
import { Close } from './close.tsx';
import { TargetSearch } from './target-search.tsx';

const EMPTY: Draft = { complaint: '', cause: null, mode: '', correction: '' };

export function WriteUp({ session }: { session: Session }) {
  const [draft, setDraft] = useState<Draft>(session.stored.draft ?? EMPTY);
  const [missing, setMissing] = useState(false);
  const change = (part: Partial<Draft>): void => {
    const next = { ...draft, ...part };
    session.keepDraft(next);
    setDraft(next);
    setMissing(false);
  };
  const save = (event: Event): void => {
    event.preventDefault();
    const { cause, mode, complaint, correction } = draft;
    const incomplete = cause === null || (cause !== '' && mode === '');
    setMissing(incomplete);
    if (!incomplete) session.act({ do: 'writeUp', complaint, cause, mode, correction });
  };
  const written = writtenAt(session);
  return (
    <>
      <form class="write-up" onSubmit={save}>
        <p class="hint">{t('write.intro')}</p>
        <GrowingText
          label={t('write.complaint')}
          value={draft.complaint}
          onText={(complaint) => change({ complaint })}
        />
        <Cause session={session} draft={draft} change={change} />
        <GrowingText
          label={t('write.correction')}
          value={draft.correction}
          onText={(correction) => change({ correction })}
        />
        {missing ? (
          <p class="warn" role="alert">
            {t('write.missing')}
          </p>
        ) : null}
        <button type="submit" class="strong">
          {t('write.save')}
        </button>
        {written === null ? null : <p class="hint">{t('write.saved', { minute: written })}</p>}
      </form>
      <Close session={session} />
    </>
  );
}

interface CauseProps {
  session: Session;
  draft: Draft;
  change: (part: Partial<Draft>) => void;
}

function Cause({ session, draft, change }: CauseProps) {
  const { model } = session;
  const mode = useRef<HTMLSelectElement>(null);
  // The search goes when something is chosen; what comes next takes the focus.
  useEffect(() => {
    if (draft.cause !== null && draft.mode === '') mode.current?.focus();
  }, [draft.cause, draft.mode]);
  if (draft.cause === null) {
    return (
      <>
        <TargetSearch
          model={model}
          label={t('write.cause')}
          hint={t('clip.suspectsHint')}
          action={t('write.modePick')}
          onPick={(cause) => change({ cause, mode: '' })}
          near={workedOn(session)}
        />
        <button type="button" class="plain" onClick={() => change({ cause: '', mode: '' })}>
          {t('write.causeNone')}
        </button>
      </>
    );
  }
  const name = draft.cause === '' ? t('write.causeNone') : targetName(model, draft.cause);
  return (
    <>
      <p class="chosen">
        <b>{t('write.causeChosen', { what: name })}</b>
        <button type="button" class="plain" onClick={() => change({ cause: null, mode: '' })}>
          {t('write.change')}
        </button>
      </p>
      {draft.cause === '' ? null : (
        <label class="field">
          <span>{t('write.mode')}</span>
          <select
            ref={mode}
            value={draft.mode}
            aria-describedby={draft.mode === '' ? undefined : 'mode-note'}
            onChange={(event) => change({ mode: event.currentTarget.value })}
          >
            <option value="">{t('write.modePick')}</option>
            {modesOf(model, draft.cause).map((mode) => (
              <option key={mode} value={mode} title={wordFor('modeNotes', mode)}>
                {modeName(mode)}
              </option>
            ))}
          </select>
        </label>
      )}
      {draft.cause === '' || draft.mode === '' ? null : (
        <p class="mode-note" id="mode-note">
          {wordFor('modeNotes', draft.mode)}
        </p>
      )}
    </>
  );
}

/** What was repaired, the last one first, and what is suspected: one of them it will be. */
function workedOn({ attempt, bench }: Session): string[] {
  const repaired = attempt.records.flatMap(({ entry: { action } }) => (action.do === 'repair' ? [action.target] : []));
  return [...new Set([...repaired.reverse(), ...bench.marked])];
}

function writtenAt({ attempt }: Session): string | null {
  let tenths = 0;
  let at: string | null = null;
  for (const record of attempt.records) {
    tenths += record.cost.tenths;
    if (record.entry.action.do === 'writeUp') at = minutes(tenths);
  }
  return at;
}

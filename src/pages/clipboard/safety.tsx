/** The safety board: precautions set by hand, and those that the machine's state gives. */
import { useRef } from 'preact/hooks';
import { helperIsThere, isSetByHand, stands } from '../../job/index.ts';
import type { PrecautionSpec } from '../../machine/index.ts';
import { leavesOf } from '../../parts/index.ts';
import { ActButton } from '../parts/act-button.tsx';
import { useArrows } from '../parts/arrows.ts';
import { knownControls } from '../state/known-controls.ts';
import { lapsedBy } from '../state/lapsed.ts';
import { lacksHelper } from '../state/needs-helper.ts';
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { costText } from '../words/actions.ts';
import { sinceText } from '../words/lapsed.ts';
import { doneText, toDoText } from '../words/precautions.ts';
import { t } from '../words/words.ts';

const MS_PER_TENTH = 6000;

export function Safety({ session }: { session: Session }) {
  const { book, bench, attempt } = session;
  const here = helperIsThere(bench, attempt.timeMs);
  const byHand = book.precautions.filter(isSetByHand);
  const byState = book.precautions.filter((p) => !isSetByHand(p));
  return (
    <>
      <p class="hint">{t('clip.safetyIntro')}</p>
      <div class="helper-line">
        <p>
          {here && bench.helperUntilMs !== null
            ? t('clip.helperHere', {
                minutes: minutes(Math.ceil((bench.helperUntilMs - attempt.timeMs) / MS_PER_TENTH)),
              })
            : t('clip.helperNone')}
        </p>
        <ActButton session={session} action={{ do: 'helper', call: !here }} />
      </div>
      <h3>{t('clip.safetyHand')}</h3>
      <HandList session={session} precautions={byHand} />
      <h3>{t('clip.safetyMachine')}</h3>
      <ul class="precautions">
        {byState.map((p) => (
          <StateRow key={p.id} session={session} precaution={p} />
        ))}
      </ul>
    </>
  );
}

function HandList({ session, precautions }: { session: Session; precautions: PrecautionSpec[] }) {
  const ref = useRef<HTMLUListElement>(null);
  useArrows(ref);
  return (
    <ul class="precautions" ref={ref}>
      {precautions.map((p) => (
        <HandRow key={p.id} session={session} precaution={p} />
      ))}
    </ul>
  );
}

function HandRow({ session, precaution }: { session: Session; precaution: PrecautionSpec }) {
  const { id } = precaution;
  const [done, text] = [doneText(session.model, id), toDoText(session.model, id)];
  const on = session.bench.precautions.includes(id);
  const lapsed = lapsedBy(session.attempt.records, id);
  const alone = !on && lacksHelper(session, precaution);
  return (
    <li class={on ? 'precaution on' : lapsed !== null ? 'precaution lapsed' : 'precaution'}>
      <button
        type="button"
        role="switch"
        aria-checked={on}
        disabled={alone}
        onClick={() => session.act({ do: 'precaution', id, on: !on })}
      >
        <span class="tick" aria-hidden="true" />
        <span class="precaution-name">{done}</span>
        {lapsed === null ? null : (
          <span class="state-word">{t('clip.lapsed', { since: sinceText(session.book, lapsed) })}</span>
        )}
        <span class="act-cost">{costText(session, { do: 'precaution', id, on: !on })}</span>
      </button>
      {alone ? <p class="precaution-text">{t('clip.needsHelper')}</p> : null}
      {text === done ? null : <p class="precaution-text">{text}</p>}
    </li>
  );
}

function StateRow({ session, precaution }: { session: Session; precaution: PrecautionSpec }) {
  const { attempt, book, bench } = session;
  const known = knownControls(book, attempt.records);
  const controls =
    precaution.needs === null ? [] : leavesOf(precaution.needs).flatMap((l) => ('control' in l ? [l.control] : []));
  const seen = controls.every((id) => known.has(id));
  const on = seen && stands(attempt.rig.world, bench, precaution);
  const word = on ? t('clip.stands') : t('clip.standsNot');
  return (
    <li class={on ? 'precaution on' : 'precaution'}>
      <p class="precaution-state">
        <span class="tick" aria-hidden="true" />
        <span class="precaution-name">{doneText(session.model, precaution.id)}</span>
        <span class="state-word">{seen ? word : t('clip.notSeen')}</span>
      </p>
      {on ? null : <p class="precaution-text">{toDoText(session.model, precaution.id)}</p>}
    </li>
  );
}

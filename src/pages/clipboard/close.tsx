/** Closing a job: what still stands open, how it ends, and once more "are you sure". */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Action, Ending } from '../../job/index.ts';
import { ActButton } from '../parts/act-button.tsx';
import type { Session } from '../state/session.ts';
import { stillOpen } from '../state/still-open.ts';
import { refreshShelf } from '../state/store.ts';
import { zoneName } from '../words/names.ts';
import { t } from '../words/words.ts';

const ENDINGS: readonly Ending[] = ['repaired', 'no-fault', 'cannot-duplicate', 'not-safe', 'handed-on'];

export function Close({ session }: { session: Session }) {
  const [ending, setEnding] = useState<Ending | null>(null);
  const open = stillOpen(session);
  const finish = (): void => {
    if (ending === null || 'code' in session.act({ do: 'finish', ending })) return;
    void refreshShelf();
    location.hash = `#/debrief/${session.stored.id}`;
  };
  return (
    <section class="closing" aria-labelledby="closing-title">
      <h3 id="closing-check">{t('write.check')}</h3>
      {open.length === 0 ? (
        <p class="all-clear">{t('write.allClear')}</p>
      ) : (
        <ul class="still-open">
          {open.map(({ line, remedy }) => (
            <li key={line}>
              {line}
              {remedy === undefined ? null : (
                <ActButton session={session} action={remedy} label={remedyLabel(session, remedy)} kind="work" />
              )}
            </li>
          ))}
        </ul>
      )}
      <h3 id="closing-title">{t('write.endings')}</h3>
      {/* Kept while it is asked: whoever says "not yet" goes on where they were. */}
      <div class="acts" hidden={ending !== null}>
        {ENDINGS.map((e) => (
          <button key={e} type="button" class="act act-plain" onClick={() => setEnding(e)}>
            <span class="act-name">{t(`write.${e}`)}</span>
          </button>
        ))}
      </div>
      {ending === null ? null : <Sure ending={ending} onYes={finish} onNo={() => setEnding(null)} />}
    </section>
  );
}

function Sure({ ending, onYes, onNo }: { ending: Ending; onYes: () => void; onNo: () => void }) {
  const ref = useRef<HTMLDivElement>(null);
  // The question is read first; neither answer is given by one press too many.
  useLayoutEffect(() => ref.current?.focus(), []);
  return (
    <div
      class="sure"
      role="alertdialog"
      data-panel
      tabIndex={-1}
      ref={ref}
      aria-labelledby="closing-title"
      aria-describedby="closing-sure"
    >
      <p id="closing-sure">{t('write.sure', { ending: t(`write.${ending}`) })}</p>
      <button type="button" class="strong" onClick={onYes}>
        {t('write.yes')}
      </button>
      <button type="button" class="plain" onClick={onNo}>
        {t('write.no')}
      </button>
    </div>
  );
}

const remedyLabel = ({ book }: Session, action: Action): string =>
  action.do === 'walk' ? t('write.walkToProve', { place: zoneName(book, action.zone) }) : t('write.proveHere');

/** The clipboard: pages that fold out over the stage. */
import { useRef } from 'preact/hooks';
import { WorkOrder } from '../order/work-order.tsx';
import { useArrows } from '../parts/arrows.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { CLIP_TABS, type ClipTab, ui } from '../state/ui.ts';
import { t } from '../words/words.ts';
import { Notebook } from './notebook.tsx';
import { Operator } from './operator.tsx';
import { Safety } from './safety.tsx';
import { Suspects } from './suspects.tsx';
import { WriteUp } from './write-up.tsx';

export function Clipboard({ session, tab }: { session: Session; tab: ClipTab }) {
  useObservable(session.view);
  const tabs = useRef<HTMLDivElement>(null);
  useArrows(tabs);
  return (
    <aside class="clipboard paper" aria-label={t('clip.title')}>
      <header class="panel-head">
        <h2 id="clipboard-title" tabIndex={-1}>
          {t('clip.heading', { page: t(`clip.tabs.${tab}`) })}
        </h2>
        <button type="button" class="plain" aria-label={t('app.close')} onClick={() => ui.update({ clip: null })}>
          ✕
        </button>
      </header>
      <div class="tabs" role="tablist" aria-label={t('clip.title')} ref={tabs}>
        {CLIP_TABS.map((id) => (
          <button
            key={id}
            type="button"
            role="tab"
            id={`tab-${id}`}
            aria-selected={id === tab}
            aria-controls="clip-page"
            onClick={() => ui.update({ clip: id, clipLast: id })}
          >
            {t(`clip.tabs.${id}`)}
          </button>
        ))}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and must do so by keyboard. */}
      <div class="panel-body" key={tab} role="tabpanel" id="clip-page" aria-labelledby={`tab-${tab}`} tabIndex={0}>
        <Page session={session} tab={tab} />
      </div>
    </aside>
  );
}

function Page({ session, tab }: { session: Session; tab: ClipTab }) {
  switch (tab) {
    case 'order':
      return <WorkOrder job={session.job} model={session.model} />;
    case 'notes':
      return <Notebook session={session} />;
    case 'suspects':
      return <Suspects session={session} />;
    case 'safety':
      return <Safety session={session} />;
    case 'operator':
      return <Operator session={session} />;
    case 'writeUp':
      return <WriteUp session={session} />;
  }
}

/** The shop screen: the stage fills the window, everything else lies on it or folds out beside it. */
import { useEffect } from 'preact/hooks';
import type { Record } from '../../job/index.ts';
import { Clipboard } from '../clipboard/clipboard.tsx';
import { Here } from '../here/here.tsx';
import { Tool } from '../meter/tool.tsx';
import { swallowDoubleClicks } from '../parts/double-click.ts';
import { lazy } from '../parts/lazy.tsx';
import { useTitle } from '../parts/title.ts';
import { watchMoments } from '../state/moment.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { ui } from '../state/ui.ts';
import { t } from '../words/words.ts';
import { listenForKeys } from './keys.ts';
import { SheetBar } from './sheet-bar.tsx';
import { SheetNews } from './sheet-news.tsx';
import { Slip } from './slip.tsx';
import { startSounds } from './sounds.ts';
import { StagePane } from './stage-pane.tsx';
import { HoverName, StageTools } from './tool-bar.tsx';
import { TopBar } from './top-bar.tsx';

const Manual = lazy(async () => (await import('../manual/manual.tsx')).Manual);

export function Shop({ session }: { session: Session }) {
  const { here, hereAside, clip, manual, sheet, aside } = useObservable(ui);
  useTitle(`${t('shop.title')}: ${session.job.title}`);
  useEffect(swallowDoubleClicks, []);
  useEffect(() => watchMoments(session), [session]);
  useEffect(() => startSounds(session), [session]);
  useEffect(() => session.onRecord(arrive), [session]);
  useEffect(() => listenForKeys(session), [session]);
  const floor = [
    'floor',
    here ? 'with-here' : '',
    clip === null ? '' : 'with-clip',
    manual ? 'with-manual' : '',
    sheet === null ? '' : 'with-sheet',
  ];
  return (
    <div class="shop">
      <TopBar session={session} />
      <main class={floor.join(' ')} id="work" tabIndex={-1} aria-label={t('shop.title')}>
        {here || hereAside ? <Here session={session} away={!here} /> : null}
        <div class="bench">
          <StagePane session={session} />
          <StageTools session={session} />
          <HoverName session={session} />
          {sheet === null ? null : <SheetBar session={session} />}
          <SheetNews />
          <Slip session={session} />
          {aside === 'YARD' || aside === 'YARD-RIGHT' ? null : <Tool session={session} />}
        </div>
        {clip === null ? null : <Clipboard session={session} tab={clip} />}
        {manual ? <Manual session={session} /> : null}
      </main>
    </div>
  );
}

/**
 * Whoever walks looks at where they went, and at nothing that was pointed at before. Whoever sets a lead down takes up
 * the instrument: what was asked for before no longer holds.
 */
function arrive({ entry: { action } }: Record): void {
  if (action.do === 'walk') ui.update({ aside: null, selected: null, point: null });
  if (action.do === 'lead') ui.update({ toolHeld: null });
}

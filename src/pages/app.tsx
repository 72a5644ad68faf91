/** Which screen the address names. */
import { useEffect, useState } from 'preact/hooks';
import { Board } from './board/board.tsx';
import { OrderPage } from './order/order-page.tsx';
import { lazy } from './parts/lazy.tsx';
import { Shop } from './shop/shop.tsx';
import { jobById } from './state/catalog.ts';
import { useObservable } from './state/observable.ts';
import type { Session } from './state/session.ts';
import { applySettings, settings, watchSystem } from './state/settings.ts';
import { openAttempt, refreshShelf } from './state/store.ts';
import { ui } from './state/ui.ts';
import { t } from './words/words.ts';

const DebriefPage = lazy(async () => (await import('./debrief/debrief-page.tsx')).DebriefPage);
const Help = lazy(async () => (await import('./help/help.tsx')).Help);
const SettingsSheet = lazy(async () => (await import('./help/settings-sheet.tsx')).SettingsSheet);

function useAddress(): string[] {
  const [hash, setHash] = useState(location.hash);
  useEffect(() => {
    const onHash = (): void => {
      setHash(location.hash);
      requestAnimationFrame(() => {
        document.getElementById('work')?.focus({ preventScroll: true });
        scrollTo(0, 0);
      });
    };
    addEventListener('hashchange', onHash);
    return () => removeEventListener('hashchange', onHash);
  }, []);
  return hash.replace(/^#\/?/, '').split('/');
}

export function App() {
  const [page, id] = useAddress();
  const { dialog } = useObservable(ui);
  useObservable(settings);
  useEffect(() => {
    applySettings();
    watchSystem();
    void refreshShelf();
  }, []);
  useEffect(() => {
    if (page !== 'shop') void refreshShelf();
  }, [page]);
  return (
    <>
      <button type="button" class="skip" onClick={skip}>
        {t('app.skip')}
      </button>
      {page === 'shop' ? null : <Head onBoard={page === '' || page === undefined} />}
      <Screen page={page ?? ''} id={id ?? ''} />
      {dialog === 'help' ? <Help /> : null}
      {dialog === 'settings' ? <SettingsSheet /> : null}
    </>
  );
}

/** The address names the screen, so that a link can't name a part of it: the focus is moved instead. */
function skip(): void {
  document.getElementById('work')?.focus();
}

function Head({ onBoard }: { onBoard: boolean }) {
  return (
    <header class="page-head">
      <p class="brand">
        {t('app.name')} <span>{t('app.tagline')}</span>
      </p>
      <nav>
        {onBoard ? null : <a href="#/">{t('app.back')}</a>}
        <button type="button" class="plain" onClick={() => ui.update({ dialog: 'help' })}>
          {t('app.help')}
        </button>
        <button type="button" class="plain" onClick={() => ui.update({ dialog: 'settings' })}>
          {t('app.settings')}
        </button>
      </nav>
    </header>
  );
}

function Screen({ page, id }: { page: string; id: string }) {
  if (page === 'shop' || page === 'debrief') return <Opened page={page} id={id} />;
  const job = page === 'job' ? jobById(id) : undefined;
  return job === undefined ? <Board /> : <OrderPage job={job} />;
}

function Opened({ page, id }: { page: 'shop' | 'debrief'; id: string }) {
  const [session, setSession] = useState<Session | null>(null);
  useEffect(() => {
    let gone = false;
    void openAttempt(id).then((opened) => {
      if (gone) return;
      if (opened === null) location.hash = '#/';
      else setSession(opened);
    });
    return () => {
      gone = true;
    };
  }, [id]);
  useEffect(() => {
    if (session !== null) document.getElementById('work')?.focus({ preventScroll: true });
  }, [session]);
  if (session === null) return <p class="loading">{t('app.loading')}</p>;
  return page === 'shop' && session.attempt.phase !== 'ended' ? (
    <Shop session={session} />
  ) : (
    <DebriefPage session={session} />
  );
}

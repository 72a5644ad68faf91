/** What job, where, how long and how dear; and what can be folded out. */
import { billOf, helperIsThere } from '../../job/index.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { labourStep, minutes, money } from '../state/settings.ts';
import { toggleSheet } from '../state/sheets.ts';
import { ui } from '../state/ui.ts';
import { zoneName } from '../words/names.ts';
import { t } from '../words/words.ts';

export function TopBar({ session }: { session: Session }) {
  useObservable(session.view);
  const { book, bench, attempt, job } = session;
  return (
    <header class="top-bar">
      <a class="home" href="#/">
        {t('app.back')}
      </a>
      <h1>{job.title}</h1>
      <dl class="figures">
        <Figure name={t('shop.place')} value={zoneName(book, bench.zone)} wide />
        <Figure name={t('shop.minutes')} value={minutes(attempt.tenths)} />
        <Figure
          name={t('shop.bill')}
          note={t('shop.billSteps', labourStep(book))}
          title={t('shop.billWhy', labourStep(book))}
          value={money(billOf(book, attempt.tenths, attempt.price))}
        />
      </dl>
      {helperIsThere(bench, attempt.timeMs) ? <span class="badge">{t('shop.helper')}</span> : null}
      <nav class="folders" aria-label={t('shop.title')}>
        <Folders />
      </nav>
    </header>
  );
}

interface FigureProps {
  name: string;
  value: string;
  wide?: boolean;
  note?: string;
  title?: string;
}

function Figure({ name, value, wide = false, note, title }: FigureProps) {
  return (
    <div class={wide ? 'figure figure-wide' : 'figure'} title={title}>
      <dt>
        {name}
        {note === undefined ? null : <span class="figure-note"> {note}</span>}
      </dt>
      <dd>{value}</dd>
    </div>
  );
}

function Folders() {
  const now = useObservable(ui);
  const folder = (label: string, open: boolean, press: () => void) => (
    <button type="button" class="folder" aria-expanded={open} onClick={press}>
      {label}
    </button>
  );
  return (
    <>
      {folder(t('shop.here'), now.here, () => ui.update({ here: !now.here, hereAside: false }))}
      {folder(t('shop.schematic'), now.sheet !== null, toggleSheet)}
      {folder(t('shop.manual'), now.manual, () => ui.update({ manual: !now.manual, clip: null }))}
      {folder(t('shop.clipboard'), now.clip !== null, () =>
        ui.update({ clip: now.clip === null ? now.clipLast : null, manual: false }),
      )}
      <button type="button" class="folder" aria-label={t('app.help')} onClick={() => ui.update({ dialog: 'help' })}>
        ?
      </button>
      <button
        type="button"
        class="folder"
        aria-label={t('app.settings')}
        onClick={() => ui.update({ dialog: 'settings' })}
      >
        ⚙
      </button>
    </>
  );
}

/** Finds what is drawn, by number or name; says what it found, since a ring on a drawing is silent. */
import { useState } from 'preact/hooks';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { sheetTitle } from '../state/sheets.ts';
import { ui } from '../state/ui.ts';
import { t } from '../words/words.ts';
import { type Drawn, drawnBy, isNumbered, onOtherSheet } from './drawn.ts';
import { onStage } from './stage-pane.tsx';

/** Another sheet is on the stage by then, ms. */
const TURNED_MS = 200;

export function FindBox({ session }: { session: Session }) {
  const [text, setText] = useState('');
  const [news, setNews] = useState('');
  const { sheet } = useObservable(ui);
  const type = (typed: string): void => {
    setText(typed);
    setNews(typed.trim() === '' ? '' : countText(found(session, typed)));
  };
  const find = (event: Event): void => {
    event.preventDefault();
    if (text.trim() === '') return;
    const [first] = found(session, text);
    const other = onOtherSheet(session.model, sheet, text);
    // What only begins like it here gives way to what bears that very number on another sheet.
    const elsewhere = other?.exact === true && !isNumbered(session.model, onStageIds(), text);
    if (first !== undefined && !elsewhere) {
      onStage.current?.locate(first.id);
      setNews(t('shop.foundAt', { name: first.name, where: whereText(first.id) }));
      return;
    }
    if (other === null) {
      setNews(t('shop.foundNowhere'));
      return;
    }
    ui.update({ sheet: other.sheet });
    setTimeout(() => onStage.current?.locate(other.drawn.id), TURNED_MS);
    setNews(t('shop.foundSheet', { name: other.drawn.name, sheet: sheetTitle(other.sheet) }));
  };
  return (
    <form class="find" onSubmit={find}>
      <input
        type="search"
        aria-label={t('shop.find')}
        placeholder={t('shop.findHint')}
        value={text}
        onInput={(event) => type(event.currentTarget.value)}
      />
      <p class={news === '' ? 'unseen' : 'find-news'} role="status">
        {news}
      </p>
    </form>
  );
}

const onStageIds = (): Set<string> =>
  new Set((onStage.current?.spots() ?? []).flatMap(({ point, part }) => point ?? part ?? []));

const found = ({ model }: Session, text: string): Drawn[] => drawnBy(model, onStageIds(), text);

function countText([first, ...more]: Drawn[]): string {
  if (first === undefined) return t('shop.foundNone');
  return more.length === 0
    ? t('shop.foundOne', { name: first.name })
    : t('shop.foundSome', { count: more.length + 1, name: first.name });
}

function whereText(id: string): string {
  const spots = (onStage.current?.spots() ?? []).filter(({ point, part }) => point === id || part === id);
  const onSheet = spots.some((spot) => spot.onSheet);
  if (!spots.some((spot) => !spot.onSheet)) return t('shop.onSchematic');
  return onSheet ? t('shop.onBoth') : t('shop.onPlace');
}

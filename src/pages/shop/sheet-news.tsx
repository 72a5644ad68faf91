/** Says that the schematic came or went, and the list with it: the drawing itself is silent. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { useObservable } from '../state/observable.ts';
import { sheetTitle } from '../state/sheets.ts';
import { ui } from '../state/ui.ts';
import { t } from '../words/words.ts';

export function SheetNews() {
  const { sheet, hereAside } = useObservable(ui);
  const [news, setNews] = useState('');
  const before = useRef({ sheet, hereAside });
  useEffect(() => {
    const was = before.current;
    before.current = { sheet, hereAside };
    if (sheet === was.sheet) return;
    if (sheet === null) setNews(t(was.hereAside ? 'shop.sheetGoneListBack' : 'shop.sheetGone'));
    else if (was.sheet === null && hereAside) setNews(t('shop.sheetOpenListAway', { sheet: sheetTitle(sheet) }));
    else setNews(t('shop.sheetOpen', { sheet: sheetTitle(sheet) }));
  }, [sheet]);
  return (
    <p class="unseen" role="status">
      {news}
    </p>
  );
}

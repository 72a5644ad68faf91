/** The schematic's edge: which sheet, zoom, and the divider that moves. */
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { isStacked } from '../../game/viewport.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { sheets, sheetTitle } from '../state/sheets.ts';
import { closeSheet, ui } from '../state/ui.ts';
import { t } from '../words/words.ts';
import { FindBox } from './find-box.tsx';
import { onStage } from './stage-pane.tsx';

const LEAST = 0.2;
const MOST = 0.8;
const STEP = 0.05;
/** The height that place and schematic share when one lies above the other. */
const ALONG = '(100% - var(--strip) - var(--bar))';

export function SheetBar({ session }: { session: Session }) {
  const { sheet, split } = useObservable(ui);
  const stacked = useStacked();
  const bar = useRef<HTMLElement>(null);
  // As with the other panels: whoever opens it goes on in it. What had the focus may go at the same moment.
  useLayoutEffect(() => bar.current?.focus({ preventScroll: true }), []);
  const share = Math.round(split * 100) / 100;
  const below = `calc(${ALONG} * ${share} + var(--bar) + 8px)`;
  return (
    <>
      <Divider stacked={stacked} />
      <section
        class="sheet-bar"
        data-panel
        tabIndex={-1}
        ref={bar}
        aria-label={t('shop.sheetBar', { sheet: sheet === null ? '' : sheetTitle(sheet) })}
        style={stacked ? { top: below } : { left: `calc(${share * 100}% + 12px)` }}
      >
        <label>
          <span class="unseen">{t('shop.sheet')}</span>
          <select value={sheet ?? ''} onChange={(event) => ui.update({ sheet: event.currentTarget.value })}>
            {sheets.map((s) => (
              <option key={s.id} value={s.id}>
                {t('shop.sheetName', { number: s.number, title: s.title })}
              </option>
            ))}
          </select>
        </label>
        <FindBox session={session} />
        <SheetZoom />
        <button type="button" class="plain" aria-label={t('app.close')} onClick={closeSheet}>
          ✕
        </button>
      </section>
    </>
  );
}

function SheetZoom() {
  const zoom = (step: 1 | -1 | 0) => () => onStage.current?.zoom(step, 'sheet');
  return (
    <span class="zoom">
      <button type="button" class="plain" aria-label={t('shop.wider')} onClick={zoom(-1)}>
        −
      </button>
      <button type="button" class="plain" onClick={zoom(0)}>
        {t('shop.whole')}
      </button>
      <button type="button" class="plain" aria-label={t('shop.closer')} onClick={zoom(1)}>
        +
      </button>
    </span>
  );
}

/** The drawing lays the schematic below the place where that gives both more room. */
function useStacked(): boolean {
  const [stacked, setStacked] = useState(false);
  useEffect(() => {
    const host = document.querySelector('.stage-host');
    if (host === null) return;
    const observer = new ResizeObserver(() => setStacked(isStacked({ w: host.clientWidth, h: host.clientHeight })));
    observer.observe(host);
    return () => observer.disconnect();
  }, []);
  return stacked;
}

function Divider({ stacked }: { stacked: boolean }) {
  const { split } = useObservable(ui);
  const set = (to: number): void => ui.update({ split: Math.max(LEAST, Math.min(MOST, to)) });
  const drag = (event: PointerEvent): void => {
    const bar = event.currentTarget;
    const frame = document.querySelector('.stage-host')?.getBoundingClientRect();
    if (!(bar instanceof HTMLElement) || frame === undefined) return;
    bar.setPointerCapture(event.pointerId);
    const move = (now: PointerEvent): void =>
      set(stacked ? (now.clientY - frame.top) / frame.height : (now.clientX - frame.left) / frame.width);
    bar.addEventListener('pointermove', move);
    bar.addEventListener('pointerup', () => bar.removeEventListener('pointermove', move), { once: true });
  };
  const [less, more] = stacked ? ['ArrowUp', 'ArrowDown'] : ['ArrowLeft', 'ArrowRight'];
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule can't be moved.
    <div
      class={stacked ? 'divider divider-lying' : 'divider'}
      role="separator"
      tabIndex={0}
      aria-orientation={stacked ? 'horizontal' : 'vertical'}
      aria-label={t('shop.dividerLabel')}
      aria-valuemin={LEAST * 100}
      aria-valuemax={MOST * 100}
      aria-valuenow={Math.round(split * 100)}
      style={stacked ? { top: `calc(${ALONG} * ${split} + var(--bar))` } : { left: `${split * 100}%` }}
      onPointerDown={drag}
      onKeyDown={(event) => {
        if (event.key === less) set(split - STEP);
        if (event.key === more) set(split + STEP);
      }}
    />
  );
}

/** The schematic's edge: which sheet, zoom, and the divider that moves. */

import { useObservable } from '../state/observable.ts';
import { sheets } from '../state/sheets.ts';
import { ui } from '../state/ui.ts';
import { t } from '../words/words.ts';
import { onStage } from './stage-pane.tsx';
import { FindBox } from './tool-bar.tsx';

const LEAST = 0.2;
const MOST = 0.8;
const STEP = 0.05;

export function SheetBar() {
  const { sheet, split } = useObservable(ui);
  const at = `${Math.round(split * 100)}%`;
  return (
    <>
      <Divider />
      <div class="sheet-bar" style={{ left: `calc(${at} + 12px)` }}>
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
        <FindBox />
        <SheetZoom />
        <button type="button" class="plain" aria-label={t('app.close')} onClick={() => ui.update({ sheet: null })}>
          ✕
        </button>
      </div>
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

function Divider() {
  const { split } = useObservable(ui);
  const set = (to: number): void => ui.update({ split: Math.max(LEAST, Math.min(MOST, to)) });
  const drag = (event: PointerEvent): void => {
    const bar = event.currentTarget;
    if (!(bar instanceof HTMLElement) || bar.parentElement === null) return;
    const frame = bar.parentElement.getBoundingClientRect();
    bar.setPointerCapture(event.pointerId);
    const move = (now: PointerEvent): void => set((now.clientX - frame.left) / frame.width);
    bar.addEventListener('pointermove', move);
    bar.addEventListener('pointerup', () => bar.removeEventListener('pointermove', move), { once: true });
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule can't be moved.
    <div
      class="divider"
      role="separator"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label={t('shop.dividerLabel')}
      aria-valuemin={LEAST * 100}
      aria-valuemax={MOST * 100}
      aria-valuenow={Math.round(split * 100)}
      style={{ left: `${split * 100}%` }}
      onPointerDown={drag}
      onKeyDown={(event) => {
        if (event.key === 'ArrowLeft') set(split - STEP);
        if (event.key === 'ArrowRight') set(split + STEP);
      }}
    />
  );
}

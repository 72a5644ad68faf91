/** The instrument's head: dragged or moved with the arrow keys, folded, exchanged for the other one. */
import type { RefObject } from 'preact';
import { useObservable } from '../state/observable.ts';
import { shelf } from '../state/store.ts';
import { ui } from '../state/ui.ts';
import { t } from '../words/words.ts';

/** One press of an arrow key, pixels. */
const STEP = 24;

interface Props {
  title: string;
  isLamp: boolean;
  held: boolean;
  tool: RefObject<HTMLElement>;
  onMove: (to: { x: number; y: number }) => void;
  /** It lies still again where it was put. */
  onPut: () => void;
}

export function Grip({ title, isLamp, held, tool, onMove, onPut }: Props) {
  const { toolFolded } = useObservable(ui);
  const dialShows = held && !toolFolded;
  const place = (dx: number, dy: number): void => {
    const element = tool.current;
    const frame = element?.offsetParent;
    if (element === null || frame === null || frame === undefined) return;
    const x = clamp(element.offsetLeft + dx, frame.clientWidth - element.offsetWidth);
    const y = clamp(element.offsetTop + dy, frame.clientHeight - 56);
    onMove({ x, y });
  };
  return (
    <header class="tool-head">
      <Exchange />
      {isLamp ? null : (
        <button
          type="button"
          class="plain"
          aria-expanded={dialShows}
          aria-label={dialShows ? t('meter.fold') : t('meter.unfold')}
          onClick={() => ui.update({ toolFolded: dialShows, toolHeld: true })}
        >
          {t('meter.unfold')}
        </button>
      )}
      <button
        type="button"
        class="plain"
        aria-label={held ? t('meter.putDown') : t('meter.pickUp')}
        aria-expanded={held}
        onClick={() => ui.update({ toolHeld: !held })}
      >
        {held ? '–' : '▢'}
      </button>
      {/* Drawn first and come to last: what measures is wanted more often than to move it. */}
      <button
        type="button"
        class="grip"
        aria-label={`${title}. ${t('meter.move')}. ${t('meter.moveHint')}`}
        onPointerDown={(event) => carry(event, place, onPut)}
        onKeyDown={(event) => {
          const by = { ArrowLeft: [-STEP, 0], ArrowRight: [STEP, 0], ArrowUp: [0, -STEP], ArrowDown: [0, STEP] }[
            event.key
          ];
          if (by === undefined) return;
          event.preventDefault();
          place(by[0] ?? 0, by[1] ?? 0);
          onPut();
        }}
      >
        <span aria-hidden="true">⠿ </span>
        {title}
      </button>
    </header>
  );
}

function Exchange() {
  const session = shelf.value.open;
  if (session === null) return null;
  const take = session.bench.instrument === 'meter' ? 'lamp' : 'meter';
  return (
    <button type="button" class="plain" onClick={() => session.act({ do: 'instrument', take })}>
      {take === 'lamp' ? t('meter.takeLamp') : t('meter.takeMeter')}
    </button>
  );
}

const clamp = (value: number, most: number): number => Math.max(0, Math.min(value, Math.max(0, most)));

function carry(event: PointerEvent, place: (dx: number, dy: number) => void, put: () => void): void {
  const grip = event.currentTarget;
  if (!(grip instanceof HTMLElement) || event.button !== 0) return;
  grip.setPointerCapture(event.pointerId);
  let [x, y, moved] = [event.clientX, event.clientY, false];
  const move = (now: PointerEvent): void => {
    moved = true;
    place(now.clientX - x, now.clientY - y);
    [x, y] = [now.clientX, now.clientY];
  };
  const drop = (): void => {
    grip.removeEventListener('pointermove', move);
    if (moved) put();
  };
  grip.addEventListener('pointermove', move);
  grip.addEventListener('pointerup', drop, { once: true });
}

/** Pointer input of the canvas: tap, hold, drag to pan, pinch and wheel to zoom. Positions are pixels of the screen (CSS). */
import type { Disposer } from './disposer.ts';

export interface GestureEvents {
  /** A press; true when it took hold of something, so that no pan begins. */
  press(x: number, y: number): boolean;
  release(): void;
  tap(x: number, y: number, isFinger: boolean): void;
  hover(x: number, y: number): void;
  leave(): void;
  pan(x: number, y: number, dx: number, dy: number): void;
  zoom(x: number, y: number, factor: number): void;
  settle(): void;
}

/** A finger that moves less than this has tapped, pixels. */
const TAP = 7;
/** A press that follows another one sooner and nearer than this is the second of a double click: ms, pixels. */
const DOUBLE = { ms: 350, near: 12 };

export interface Press {
  /** ms */
  at: number;
  x: number;
  y: number;
}
export const isSecond = (first: Press, { at, x, y }: Press): boolean =>
  at - first.at < DOUBLE.ms && Math.hypot(x - first.x, y - first.y) < DOUBLE.near;

export function listenForGestures(canvas: HTMLElement, events: GestureEvents, disposer: Disposer): void {
  const down = new Map<number, { x: number; y: number }>();
  let [moved, held, pinched] = [0, false, false];
  let last: Press | null = null;
  let isAgain = false;
  const at = (event: MouseEvent): { x: number; y: number } => {
    const box = canvas.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };

  disposer.listen(canvas, 'pointerdown', (event) => {
    if (event.button > 1) return;
    canvas.setPointerCapture(event.pointerId);
    const spot = at(event);
    down.set(event.pointerId, spot);
    if (down.size > 1) {
      pinched = true;
      return;
    }
    isAgain = last !== null && isSecond(last, { at: event.timeStamp, ...spot });
    [moved, pinched, held] = [0, false, !isAgain && events.press(spot.x, spot.y)];
  });

  disposer.listen(canvas, 'pointermove', (event) => {
    const spot = at(event);
    const last = down.get(event.pointerId);
    if (!last) {
      if (event.pointerType !== 'touch') events.hover(spot.x, spot.y);
      return;
    }
    if (down.size >= 2) pinch(event.pointerId, last, spot);
    else if (!held) {
      moved += Math.hypot(spot.x - last.x, spot.y - last.y);
      if (moved > TAP) events.pan(spot.x, spot.y, spot.x - last.x, spot.y - last.y);
    }
    down.set(event.pointerId, spot);
  });

  function pinch(id: number, last: { x: number; y: number }, spot: { x: number; y: number }): void {
    const other = [...down].find(([key]) => key !== id)?.[1];
    if (!other) return;
    const before = Math.hypot(last.x - other.x, last.y - other.y);
    const after = Math.hypot(spot.x - other.x, spot.y - other.y);
    const [x, y] = [(spot.x + other.x) / 2, (spot.y + other.y) / 2];
    events.pan(x, y, (spot.x - last.x) / 2, (spot.y - last.y) / 2);
    if (before > 8) events.zoom(x, y, after / before);
  }

  const up = (event: PointerEvent, isTap: boolean): void => {
    if (!down.delete(event.pointerId)) return;
    if (down.size > 0) return;
    if (held) events.release();
    else if (isTap && !pinched && moved <= TAP) {
      if (!isAgain) events.tap(at(event).x, at(event).y, event.pointerType === 'touch');
    } else events.settle();
    if (!isAgain && moved <= TAP) last = { at: event.timeStamp, ...at(event) };
    held = false;
  };
  disposer.listen(canvas, 'pointerup', (event) => up(event, true));
  disposer.listen(canvas, 'pointercancel', (event) => up(event, false));
  disposer.listen(canvas, 'pointerleave', () => events.leave());

  disposer.listen(
    canvas,
    'wheel',
    (event) => {
      event.preventDefault();
      const { x, y } = at(event);
      // A wheel's notch is about 100 pixels or 3 lines; a touchpad sends many small ones.
      const amount = event.deltaMode === 1 ? event.deltaY * 33 : event.deltaY;
      events.zoom(x, y, Math.exp(-Math.max(-240, Math.min(240, amount)) / 560));
      events.settle();
    },
    { passive: false },
  );
}

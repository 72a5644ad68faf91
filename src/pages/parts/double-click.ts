/**
 * The second click of a double click does nothing: an action costs minutes, and by then the button may have become the
 * one that undoes it. Keys are left alone, and so are buttons that are there to be pressed in quick succession.
 */
import { isSecond, type Press } from '../../game/gestures.ts';

const QUICK = '.zoom, .dial, .grip';

export function swallowDoubleClicks(): () => void {
  let last: Press | null = null;
  const listen = (event: MouseEvent): void => {
    const { target, timeStamp: at, clientX: x, clientY: y, detail } = event;
    // A click by key or by a screen reader has no count.
    if (detail === 0 || !(target instanceof Element) || !target.closest('button') || target.closest(QUICK)) return;
    const press = { at, x, y };
    if (last !== null && isSecond(last, press)) {
      event.preventDefault();
      event.stopPropagation();
      return;
    }
    last = press;
  };
  document.addEventListener('click', listen, true);
  return () => document.removeEventListener('click', listen, true);
}

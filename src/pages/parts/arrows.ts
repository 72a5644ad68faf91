/** One stop of the Tab key for a list; the arrow keys move inside it. Tab comes to the tab that is chosen. */
import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

const ITEMS = 'button:not([disabled])';

export function useArrows(ref: RefObject<HTMLElement>): void {
  useEffect(() => {
    const list = ref.current;
    if (list === null) return;
    arrange(list);
    const onKey = (event: KeyboardEvent): void => move(list, event);
    const onFocus = (event: FocusEvent): void => {
      if (event.target instanceof HTMLElement) arrange(list, event.target);
    };
    list.addEventListener('keydown', onKey);
    const onLeave = ({ relatedTarget }: FocusEvent): void => {
      if (!(relatedTarget instanceof Node && list.contains(relatedTarget))) arrange(list);
    };
    list.addEventListener('focusin', onFocus);
    list.addEventListener('focusout', onLeave);
    return () => {
      list.removeEventListener('keydown', onKey);
      list.removeEventListener('focusin', onFocus);
      list.removeEventListener('focusout', onLeave);
    };
  });
}

function arrange(list: HTMLElement, current?: HTMLElement): void {
  const items = [...list.querySelectorAll<HTMLElement>(ITEMS)];
  const focused =
    current ??
    items.find((item) => item === document.activeElement) ??
    items.find((item) => item.getAttribute('aria-selected') === 'true') ??
    items.find((item) => item.tabIndex === 0 && item.dataset.stop === '1');
  const stop = focused !== undefined && items.includes(focused) ? focused : items[0];
  for (const item of items) {
    item.tabIndex = item === stop ? 0 : -1;
    item.dataset.stop = item === stop ? '1' : '';
  }
}

function move(list: HTMLElement, event: KeyboardEvent): void {
  const items = [...list.querySelectorAll<HTMLElement>(ITEMS)];
  const at = document.activeElement instanceof HTMLElement ? items.indexOf(document.activeElement) : -1;
  if (at < 0) return;
  const to = target(items, at, event.key);
  if (to === null) return;
  event.preventDefault();
  event.stopPropagation();
  items[to]?.focus();
}

/** Up and down go from row to row, left and right from button to button. */
function target(items: HTMLElement[], at: number, key: string): number | null {
  const rowOf = (item: HTMLElement): Element => item.closest('[data-rowbox]') ?? item;
  const row = rowOf(items[at]);
  switch (key) {
    case 'ArrowDown': {
      const next = items.findIndex((item, i) => i > at && rowOf(item) !== row);
      return next < 0 ? null : next;
    }
    case 'ArrowUp': {
      const first = items.findIndex((item) => rowOf(item) === row);
      if (first <= 0) return null;
      const above = rowOf(items[first - 1]);
      return items.findIndex((item) => rowOf(item) === above);
    }
    case 'ArrowRight':
      return Math.min(at + 1, items.length - 1);
    case 'ArrowLeft':
      return Math.max(at - 1, 0);
    case 'Home':
      return 0;
    case 'End':
      return items.length - 1;
    default:
      return null;
  }
}

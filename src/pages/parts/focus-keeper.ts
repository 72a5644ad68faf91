/** What goes from the screen must not take the focus with it: where it came from gets it back, or what lies nearest. */
// `data-rest` is on what is not pressed but can be read on.
const FOCUSABLE = 'button:not([disabled]), a[href], input, select, textarea, [tabindex="0"], [data-rest]';
/** Lies over the page or beside it; whoever closes it goes on where they were before. */
const PANEL = 'aside, dialog, [data-panel]';

/** The page has been drawn again by then, ms. */
const DRAWN_MS = 40;
/** So far back somebody may have come from, things that had the focus. */
const MOST = 60;

interface Stay {
  target: HTMLElement;
  /** Itself, where it is a panel, and all that it stands in. */
  above: Element[];
}

export function keepFocus(): void {
  const stays: Stay[] = [];
  document.addEventListener('focusin', ({ target }) => {
    if (!(target instanceof HTMLElement)) return;
    stays.push({ target, above: ancestors(target) });
    if (stays.length > MOST) stays.shift();
  });
  const soon = (): void => {
    setTimeout(() => recover(stays), DRAWN_MS);
  };
  document.addEventListener('click', soon);
  document.addEventListener('keydown', soon);
}

function recover(stays: readonly Stay[]): void {
  const last = stays.at(-1);
  if (last === undefined || last.target.isConnected || document.activeElement !== document.body) return;
  const panel = last.above.find((element) => element.matches(PANEL));
  if (panel?.isConnected === false) {
    const before = stays.findLast((stay) => !stay.above.includes(panel) && canHaveFocus(stay.target));
    (before?.target ?? document.getElementById('work'))?.focus();
    return;
  }
  for (const element of last.above) {
    const next = element.isConnected ? [...element.querySelectorAll<HTMLElement>(FOCUSABLE)].find(canHaveFocus) : null;
    if (next) {
      next.focus();
      return;
    }
  }
}

const canHaveFocus = (element: HTMLElement): boolean => element.isConnected && element.checkVisibility();

function ancestors(element: Element): Element[] {
  const list: Element[] = [];
  for (let at: Element | null = element; at !== null && at.id !== 'app'; at = at.parentElement) list.push(at);
  return list;
}

/** A button that is gone once it has been pressed must not take the focus with it: what lies nearest to it gets it. */
const FOCUSABLE = 'button:not([disabled]), a[href], input, select, textarea, [tabindex="0"]';

/** The page has been drawn again by then, ms. */
const DRAWN_MS = 40;

export function keepFocus(): void {
  let last: { target: Element; above: Element[] } | null = null;
  document.addEventListener('focusin', ({ target }) => {
    if (target instanceof Element) last = { target, above: ancestors(target) };
  });
  document.addEventListener('click', () => setTimeout(recover, DRAWN_MS));

  function recover(): void {
    if (last === null || last.target.isConnected || document.activeElement !== document.body) return;
    for (const element of last.above) {
      const next = element.isConnected ? element.querySelector<HTMLElement>(FOCUSABLE) : null;
      if (next === null) continue;
      next.focus();
      return;
    }
  }
}

function ancestors(element: Element): Element[] {
  const list: Element[] = [];
  for (let at = element.parentElement; at !== null && at.id !== 'app'; at = at.parentElement) list.push(at);
  return list;
}

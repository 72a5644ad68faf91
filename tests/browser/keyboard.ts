/** A visitor without a mouse: presses keys, counts them, and holds the page to keep the focus where it can be seen. */
import type { CDPSession, Page } from 'playwright-core';

/** So many presses go once round the whole shop: what was not met by then is not there. */
const MOST = 40;
/** The page has been drawn again by then, ms. */
const DRAWN_MS = 120;
/** A screen that is brought has come by then, ms. */
const PATIENCE_MS = 3000;

interface Focus {
  /** Role and name as a screen reader is told them. */
  role: string;
  name: string;
  /** What is wrong with it for the eye; empty is what a test wants. */
  unseen: string;
}

export class Keyboard {
  presses = 0;
  /** Typed text beside the presses, characters. */
  typed = 0;
  /** Presses that each way took. */
  readonly ways: { to: string; presses: number }[] = [];

  private constructor(
    readonly page: Page,
    private readonly cdp: CDPSession,
  ) {}

  static async of(page: Page): Promise<Keyboard> {
    const cdp = await page.context().newCDPSession(page);
    await cdp.send('Accessibility.enable');
    return new Keyboard(page, cdp);
  }

  async press(key: string): Promise<void> {
    this.presses++;
    await this.page.keyboard.press(key);
  }

  async type(text: string): Promise<void> {
    this.typed += text.length;
    await this.page.keyboard.type(text);
  }

  /** What has the focus. */
  async focus(): Promise<Focus> {
    const { result } = await this.cdp.send('Runtime.evaluate', { expression: 'document.activeElement' });
    const { nodes } = await this.cdp.send('Accessibility.getPartialAXTree', {
      ...(result.objectId === undefined ? {} : { objectId: result.objectId }),
      fetchRelatives: false,
    });
    const unseen = await this.page.evaluate(lookAtFocus);
    const node = nodes[0];
    return {
      role: String(node?.role?.value ?? ''),
      name: String(node?.name?.value ?? '').replaceAll(/\s+/g, ' '),
      unseen,
    };
  }

  /** Goes on by Tab, and in lists by the arrow keys, until what has the focus is called this. */
  async to(name: RegExp): Promise<void> {
    const seen: string[] = [];
    const before = this.presses;
    while (this.presses - before <= MOST) {
      const now = await this.focus();
      seen.push(now.name === '' ? now.role : now.name);
      if (now.unseen !== '')
        throw new Error(
          `the focus can't be seen on ${now.role} “${now.name}”: ${now.unseen}; it passed ${seen.join(' | ')}`,
        );
      if (name.test(now.name)) {
        this.ways.push({ to: now.name, presses: this.presses - before });
        return;
      }
      await this.press((await this.page.evaluate(arrowTo, [name.source, name.flags])) ?? 'Tab');
    }
    throw new Error(`${MOST} presses did not come to ${name}; they passed ${seen.join(' | ')}`);
  }

  /** Does what has the focus, and looks where the focus is afterwards. */
  async enter(key: 'Enter' | 'Space' = 'Enter'): Promise<void> {
    const { name } = await this.focus();
    await this.press(key);
    await this.held(`after ${key} on “${name}”`);
  }

  /** A switch is set, if it is not so already; whoever stands before it sees that. */
  async set(name: RegExp, to: boolean): Promise<void> {
    await this.to(name);
    const now = await this.page.evaluate(() => document.activeElement?.getAttribute('aria-checked'));
    if (now !== String(to)) await this.enter('Space');
  }

  async do(name: RegExp): Promise<void> {
    await this.to(name);
    await this.enter();
  }

  /** A key of the shop, and then on from where it leads. */
  async key(key: string): Promise<void> {
    await this.press(key);
    await this.held(`after the key ${key}`);
  }

  /** The focus is on something that can be seen, at once or when what comes has come. */
  async held(when: string): Promise<void> {
    let now = await this.focus();
    for (let waited = 0; waited < PATIENCE_MS; waited += DRAWN_MS) {
      await this.page.waitForTimeout(DRAWN_MS);
      now = await this.focus();
      if (now.unseen === '') return;
    }
    throw new Error(`${when}: the focus is on ${now.role} “${now.name}”, ${now.unseen}`);
  }
}

/** In the page: why what has the focus can't be seen. */
function lookAtFocus(): string {
  const at = document.activeElement;
  if (!(at instanceof HTMLElement) || at === document.body) return 'nothing has it';
  // Where a new screen begins: what is read from there on is the screen itself.
  if (at.tagName === 'MAIN') return '';
  if (!at.matches(':focus-visible')) return 'no sign of it is drawn';
  const { outlineStyle, outlineWidth } = getComputedStyle(at);
  if (outlineStyle === 'none' || Number.parseFloat(outlineWidth) < 2) return 'no outline is drawn';
  const box = at.getBoundingClientRect();
  if (box.width < 1 || box.height < 1) return 'it has no size';
  const spots = [0.1, 0.5, 0.9].flatMap((x) => [0.15, 0.5, 0.85].map((y) => [x, y] as const));
  const open = spots.filter(([x, y]) => {
    const top = document.elementFromPoint(box.left + x * box.width, box.top + y * box.height);
    return top !== null && (at.contains(top) || at.closest('label')?.contains(top) === true);
  });
  return open.length > 0 ? '' : 'something lies over it, or it is out of view';
}

/** In the page: the arrow key that goes on to an entry of the list that has the focus, if it has one of that name. */
function arrowTo([source, flags]: string[]): string | null {
  const at = document.activeElement;
  if (!(at instanceof HTMLElement) || at.dataset.stop !== '1') return null;
  let list: HTMLElement = at;
  for (let up = at.parentElement; up !== null; up = up.parentElement) {
    if (up.querySelectorAll('[data-stop="1"]').length > 1) break;
    list = up;
  }
  const wanted = new RegExp(source ?? '', flags);
  const items = [...list.querySelectorAll<HTMLElement>('[data-stop]')];
  const called = (item: HTMLElement): string =>
    (item.getAttribute('aria-label') ?? item.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
  const to = items.find((item) => wanted.test(called(item)));
  if (to === undefined || to === at) return null;
  const row = (item: HTMLElement): Element => item.closest('[data-rowbox]') ?? item;
  const place = (item: HTMLElement): number => items.indexOf(item);
  if (items.length - place(to) < Math.abs(place(to) - place(at)) / 2) return 'End';
  const later = (at.compareDocumentPosition(to) & Node.DOCUMENT_POSITION_FOLLOWING) > 0;
  if (row(at) === row(to)) return later ? 'ArrowRight' : 'ArrowLeft';
  return later ? 'ArrowDown' : 'ArrowUp';
}

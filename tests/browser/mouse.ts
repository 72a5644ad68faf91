/** A visitor with a mouse and nothing else: moves, presses, drags and turns the wheel. Nothing is scrolled by magic. */
import type { Locator, Page } from 'playwright-core';
import { drawnAt, spot } from './hands.ts';

/** Turns of the wheel to bring something into view. */
const MOST_TURNS = 30;
const DRAWN_MS = 120;

export class Mouse {
  clicks = 0;

  constructor(readonly page: Page) {}

  async click(target: Locator, at: { x: number; y: number } = { x: 0.5, y: 0.5 }): Promise<void> {
    await target.waitFor();
    const { x, y } = await this.bring(target, at);
    await this.clickAt(x, y);
  }

  async clickAt(x: number, y: number): Promise<void> {
    this.clicks++;
    const { mouse } = this.page;
    await mouse.move(x, y);
    await mouse.down();
    await mouse.up();
    await this.page.waitForTimeout(DRAWN_MS);
  }

  /** A spot of the drawing, units. */
  async clickDrawing(x: number, y: number): Promise<void> {
    const at = await spot(this.page, x, y);
    await this.clickAt(at.x, at.y);
  }

  /** Takes a lead from the instrument and lets it go over a point of the drawing. */
  async dragLead(lead: 'red' | 'black', place: string, point: string): Promise<void> {
    const from = await this.bring(this.page.locator(`.probe-${lead}`), { x: 0.2, y: 0.5 });
    const to = await spot(this.page, ...drawnAt(place, point));
    const { mouse } = this.page;
    await mouse.move(from.x, from.y);
    await mouse.down();
    await mouse.move(to.x - 30, to.y + 20, { steps: 4 });
    await mouse.move(to.x, to.y, { steps: 4 });
    await mouse.up();
    await this.page.waitForTimeout(DRAWN_MS);
  }

  /** Turns the wheel over what scrolls until the target lies open, and says where. */
  private async bring(target: Locator, part: { x: number; y: number }): Promise<{ x: number; y: number }> {
    for (let turn = 0; turn < MOST_TURNS; turn++) {
      const { at, isOpen, over, by } = await target.evaluate(lookFor, part);
      if (isOpen) return at;
      await this.page.mouse.move(over.x, over.y);
      await this.page.mouse.wheel(0, by);
      await this.page.waitForTimeout(DRAWN_MS);
    }
    throw new Error(`the wheel does not bring it into view: ${target}`);
  }
}

/** In the page: where the target is, whether it can be hit there, and what to scroll by how much. */
function lookFor(target: Element, part: { x: number; y: number }) {
  const box = target.getBoundingClientRect();
  const at = { x: box.left + part.x * box.width, y: box.top + part.y * box.height };
  const top = document.elementFromPoint(at.x, at.y);
  const isOpen = top !== null && (target.contains(top) || target.closest('label')?.contains(top) === true);
  let scroller: Element | null = target.parentElement;
  const scrolls = (element: Element): boolean =>
    /auto|scroll/.test(getComputedStyle(element).overflowY) && element.scrollHeight > element.clientHeight + 1;
  while (scroller !== null && !scrolls(scroller)) scroller = scroller.parentElement;
  const frame = scroller?.getBoundingClientRect() ?? new DOMRect(0, 0, innerWidth, innerHeight);
  const [above, below] = [Math.max(frame.top, 0), Math.min(frame.bottom, innerHeight)];
  const over = { x: (frame.left + frame.right) / 2, y: (above + below) / 2 };
  return { at, isOpen, over, by: at.y - over.y };
}

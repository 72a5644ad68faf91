/** Ways to use the page as a visitor does: pointing at the drawing, or with the keys alone. */

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** The drawing's size in its own units, and the margin around it, pixels. */
const [WIDTH, HEIGHT, MARGIN] = [1600, 900, 10];

/** Where a spot of a place's drawing is on screen, with nothing beside it and the whole of it in view. */
export async function spot(page: Page, x: number, y: number): Promise<{ x: number; y: number }> {
  const box = await page.locator('.stage-host canvas').boundingBox();
  if (box === null) throw new Error('the drawing is not on screen');
  const scale = Math.min((box.width - 2 * MARGIN) / WIDTH, (box.height - 2 * MARGIN) / HEIGHT);
  return {
    x: box.x + (box.width - scale * WIDTH) / 2 + scale * x,
    y: box.y + (box.height - scale * HEIGHT) / 2 + scale * y,
  };
}

interface Drawn {
  points: { point: string; x: number; y: number }[];
}

/** Where a point of the book is drawn in a place, units. */
export function drawnAt(place: string, point: string): [x: number, y: number] {
  const file = new URL(`../../assets/drawings/built/${place}.json`, import.meta.url);
  const drawing: Drawn = JSON.parse(readFileSync(file, 'utf8'));
  const found = drawing.points.find((p) => p.point === point);
  if (found === undefined) throw new Error(`${point} is not drawn in ${place}`);
  return [found.x, found.y];
}

export async function clickSpot(page: Page, x: number, y: number): Promise<void> {
  const at = await spot(page, x, y);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.up();
}

export const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

/** What stands on the slip, once it has a text like this. */
export async function slip(page: Page, text: RegExp): Promise<string> {
  const line = page.locator('.slip-text', { hasText: text });
  await line.waitFor({ timeout: 20_000 });
  return (await line.textContent()) ?? '';
}

/** Name of what has the focus, as it is spoken. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (!(at instanceof HTMLElement) || at === document.body || at.tagName === 'MAIN') return '';
    const label = at.getAttribute('aria-label') ?? '';
    return label !== '' ? label : (at.closest('label')?.textContent ?? at.textContent ?? '').replaceAll(/\s+/g, ' ');
  });

const inList = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.dataset.stop === '1');

/** Enough for the longest list. */
const MOST_KEYS = 400;

/** Goes by Tab, and in lists by the arrow keys, until what has the focus is called this. */
export async function goTo(page: Page, name: RegExp): Promise<void> {
  const seen: string[] = [];
  for (let i = 0; i < MOST_KEYS; i++) {
    const now = await focused(page);
    if (name.test(now)) return;
    seen.push(now);
    if (await inList(page)) {
      await page.keyboard.press('ArrowRight');
      if ((await focused(page)) !== now) continue;
    }
    await page.keyboard.press('Tab');
    // A list is entered where it was left.
    if (await inList(page)) await page.keyboard.press('Home');
  }
  expect.fail(`the keyboard never came to ${name}; it passed ${[...new Set(seen)].slice(0, 60).join(' | ')}`);
}

export async function pressOn(page: Page, name: RegExp): Promise<void> {
  await goTo(page, name);
  await page.keyboard.press('Enter');
}

/** To the list of this place by its key, then on to an entry of it. */
export async function inHere(page: Page, name: RegExp): Promise<void> {
  await page.keyboard.press('h');
  await page.waitForFunction(() => document.activeElement?.id === 'here-title');
  await pressOn(page, name);
}

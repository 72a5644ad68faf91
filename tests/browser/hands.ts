/** What tests of the page share: where things are drawn, and what the slip says. */

import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
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

export const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

/** What stands on the slip, once it has a text like this. */
export async function slip(page: Page, text: RegExp): Promise<string> {
  const line = page.locator('.slip-text', { hasText: text });
  await line.waitFor({ timeout: 20_000 }).catch(async () => {
    expect.fail(`the slip does not say ${text}, but: ${await page.locator('.slip-text').textContent()}`);
  });
  return (await line.textContent()) ?? '';
}

/** The job that most tests take. */
export const JOB = /Cranks slowly/;
/** Where things are drawn, units of the drawing. */
export const KEY_START = [992, 640] as const;
export const YARD_BATTERY_BOX = [1240, 620] as const;

/** A page of the clipboard, by whatever hand. */
export async function clip(page: Page, tab: string, click = (target: Locator) => target.click()): Promise<void> {
  if ((await page.locator('.clipboard').count()) === 0) await click(button(page, 'Clipboard'));
  await click(page.getByRole('tab', { name: tab }));
}

/** The drawing of a place is there when its name is in the bar and the canvas has been painted for it. */
export async function drawnPlace(page: Page, place: string): Promise<void> {
  await page.locator('.figure', { hasText: place }).waitFor();
  await page.waitForTimeout(900);
}

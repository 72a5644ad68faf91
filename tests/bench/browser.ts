/** What a student waits for, measured inside the built page in a real Chromium. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { openSite } from '../browser/support.ts';
import { type Figure, figure, median } from './figure.ts';
import { loadFigures } from './load.ts';

const project = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const DRAWINGS = project('assets/drawings/built/');
const MACHINE = project('scenarios/machines/hobbin-45/machine.json');
/** Key turns, and frames of each drawing. */
const TURNS = 9;
const FRAMES = 180;
/** A place has been painted and has come to rest by then, ms. */
const PAINTED_MS = 1500;

const button = (page: Page, name: RegExp) => page.getByRole('button', { name }).first();

export async function browserFigures(): Promise<Figure[]> {
  const site = await openSite();
  try {
    const page = await (await site.browser.newContext({ viewport: { width: 1366, height: 768 } })).newPage();
    // What runs in the page is written here, where functions are given their names by a helper.
    await page.addInitScript({ content: 'globalThis.__name = (named) => named;' });
    const load = await loadFigures(page, site);
    return [...load, ...(await keyToReading(page)), ...(await framesOfDrawings(page))];
  } finally {
    await site.close();
  }
}

async function walkTo(page: Page, place: string): Promise<void> {
  const go = page.getByRole('button', { name: 'Walk to', exact: true });
  if ((await go.getAttribute('aria-expanded')) === 'false') await go.click();
  await button(page, new RegExp(`^Walk to ${place}`)).click();
  await page.locator('.figure', { hasText: place }).waitFor();
}

/** Leads on the battery, a helper at the key: from the click that turns it to the digits that change for it. */
async function keyToReading(page: Page): Promise<Figure[]> {
  await walkTo(page, 'battery box');
  await button(page, /open battery box cover/i).click();
  await button(page, /\(G1\)/).click();
  for (const [post, lead] of ['+ red', '- black'].map((pair) => pair.split(' ')))
    await button(page, new RegExp(`\\(G1\\) terminal [${post}].*${lead} lead here`)).click();
  await button(page, /^Dial$/).click();
  await page.locator('#dial').press('ArrowRight');
  const changed: number[] = [];
  const painted: number[] = [];
  for (let turn = 0; turn < TURNS; turn++) {
    await callHelper(page);
    await button(page, /^Helper, Key switch: off/).click();
    await callHelper(page);
    const times = await button(page, /^Helper, Key switch: (hold at )?start/).evaluate(clickAndWatch);
    changed.push(times.changed);
    painted.push(times.painted);
  }
  return [
    figure('page.key-to-reading', median(changed), 'ms from the click to the digits in the page', TURNS),
    figure('page.key-to-reading.painted', median(painted), 'ms from the click to the frame that shows them', TURNS),
  ];
}

/** One who has left is called again. */
async function callHelper(page: Page): Promise<void> {
  const call = button(page, /^Call a helper/);
  if ((await call.count()) > 0) await call.click();
}

/** Runs in the page. */
function clickAndWatch(key: Element): Promise<{ changed: number; painted: number }> {
  return new Promise((resolve, reject) => {
    const digits = document.querySelector('svg.lcd');
    if (!(key instanceof HTMLElement) || digits === null) {
      reject(new Error('no key or no display'));
      return;
    }
    const late = setTimeout(() => reject(new Error('the digits stayed as they were')), 20_000);
    const observer = new MutationObserver(() => {
      const changed = performance.now() - begin;
      observer.disconnect();
      clearTimeout(late);
      requestAnimationFrame(() => setTimeout(() => resolve({ changed, painted: performance.now() - begin })));
    });
    observer.observe(digits, { attributes: true, subtree: true, childList: true, characterData: true });
    const begin = performance.now();
    key.click();
  });
}

/** The place with the largest drawing, and the schematic, each dragged about without a pause. */
async function framesOfDrawings(page: Page): Promise<Figure[]> {
  await walkTo(page, heaviestPlace());
  const place = await framesOf(page, 0.3);
  await page.keyboard.press('Escape');
  await page.keyboard.press('s');
  const sheet = await framesOf(page, 0.8);
  return [...frameFigures('page.frame.place', place), ...frameFigures('page.frame.schematic', sheet)];
}

function frameFigures(name: string, { apart, work }: Frames): Figure[] {
  return [
    figure(name, median(apart), 'ms between frames while the drawing is dragged (requestAnimationFrame)', FRAMES),
    figure(`${name}.work`, median(work), "ms of the page's own code in such a frame (its animation callbacks)", FRAMES),
  ];
}

function heaviestPlace(): string {
  const { zones }: { zones: { id: string; name: string }[] } = JSON.parse(readFileSync(MACHINE, 'utf8'));
  const sizeOf = (id: string): number => {
    const file = readdirSync(DRAWINGS).find((name) => name === `${id}.json`);
    return file === undefined ? 0 : statSync(DRAWINGS + file).size;
  };
  return [...zones].sort((a, b) => sizeOf(b.id) - sizeOf(a.id))[0].name;
}

interface Frames {
  apart: number[];
  work: number[];
}

/** @param across where in the width of the canvas, 0 to 1 */
async function framesOf(page: Page, across: number): Promise<Frames> {
  await page.waitForTimeout(PAINTED_MS);
  const box = await page.locator('.stage-host canvas').boundingBox();
  if (box === null) throw new Error('no drawing on screen');
  const [x, y] = [box.x + box.width * across, box.y + box.height * 0.5];
  // Closer first, so that there is something to drag.
  await page.mouse.move(x, y);
  for (let i = 0; i < 4; i++) await page.mouse.wheel(0, -200);
  await page.waitForTimeout(PAINTED_MS);
  await page.mouse.down();
  const frames = await page.locator('.stage-host canvas').evaluate(dragAbout, { x, y, count: FRAMES });
  await page.mouse.up();
  return frames;
}

/** Runs in the page. */
async function dragAbout(canvas: Element, { x, y, count }: { x: number; y: number; count: number }): Promise<Frames> {
  const frames: Frames = { apart: [], work: [] };
  const ask = window.requestAnimationFrame.bind(window);
  let work = 0;
  window.requestAnimationFrame = (callback) =>
    ask((now) => {
      const begin = performance.now();
      callback(now);
      work += performance.now() - begin;
    });
  // The mouse is down already, and is pointer number 1.
  const drag = (by: number): void => {
    const at = { clientX: x + by, clientY: y + by / 2, pointerId: 1, isPrimary: true, buttons: 1 };
    canvas.dispatchEvent(new PointerEvent('pointermove', { ...at, bubbles: true, pointerType: 'mouse' }));
  };
  const frame = (): Promise<number> => new Promise((resolve) => ask(resolve));
  let last = await frame();
  for (let i = 0; i < count; i++) {
    work = 0;
    drag(40 + 4 * (i % 60 < 30 ? i % 30 : 30 - (i % 30)));
    const now = await frame();
    frames.apart.push(now - last);
    frames.work.push(work);
    last = now;
  }
  window.requestAnimationFrame = ask;
  return frames;
}

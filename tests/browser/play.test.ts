/** The real page by touch, with the window closed in between, where nothing is kept, and each screen by the rules of access. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { button, clip, drawnAt, drawnPlace, JOB, slip, spot, YARD_BATTERY_BOX } from './hands.ts';
import { openSite, type Site, visit, watch } from './support.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

async function takeJob(page: Page): Promise<void> {
  await page.getByRole('link', { name: JOB }).click();
  await button(page, 'Take the job').click();
  await page.locator('.stage-host canvas').waitFor();
}

describe('on a tablet held upright', () => {
  test('by touch: both leads on, and a reading', async () => {
    const { page, errors, close } = await visit(site, { viewport: { width: 768, height: 1024 }, hasTouch: true });
    await page.getByRole('link', { name: JOB }).tap();
    await button(page, 'Take the job').tap();
    await drawnPlace(page, 'cab dash face');
    await button(page, 'Whole machine').tap();
    await page.waitForTimeout(900);
    await tapSpot(page, ...YARD_BATTERY_BOX);
    await drawnPlace(page, 'battery box');
    await button(page, /open battery box cover/i)
      .first()
      .tap();
    await page.waitForTimeout(900);
    await page.locator('.probe-red').tap();
    await tapSpot(page, ...drawnAt('BATT', 'G1.+'));
    await page.locator('.probe-black').tap();
    await tapSpot(page, ...drawnAt('BATT', 'G1.-'));
    await button(page, 'Dial').tap();
    await page.locator('#dial svg').tap({ position: { x: 58, y: 18 } });
    await button(page, /^Read \d/).tap();
    expect(await slip(page, /Meter: /)).toMatch(/Meter: 1\d\.\d\d V, red on .*G1.* terminal \+/);
    expect(errors).toEqual([]);
    await close();
  });
});

async function tapSpot(page: Page, x: number, y: number): Promise<void> {
  const to = await spot(page, x, y);
  await page.touchscreen.tap(to.x, to.y);
}

describe('work is not lost', () => {
  test('a closed window goes on where it was, and the log comes out the same when it is read in', async () => {
    const { page, errors, close } = await visit(site);
    await takeJob(page);
    await button(page, /^Key switch: run/).click();
    await slip(page, /charge lamp/i);
    await clip(page, 'Write-up');
    await page.getByLabel('Complaint').fill('Cranks slowly from cold');
    await page.getByLabel('Correction').fill('None yet');
    const minutes = await page.locator('.figure', { hasText: 'Shop minutes' }).textContent();
    const address = page.url();
    const context = page.context();
    await page.close();

    const next = await context.newPage();
    watch(next, errors);
    await next.goto(address);
    await next.locator('.shop').waitFor();
    expect(await next.locator('.figure', { hasText: 'Shop minutes' }).textContent()).toBe(minutes);
    expect(
      await next
        .locator('.control-row', { hasText: 'Key switch' })
        .getByRole('button', { pressed: true })
        .textContent(),
    ).toBe('run');
    await clip(next, 'Write-up');
    expect(await next.getByLabel('Complaint').inputValue()).toBe('Cranks slowly from cold');
    expect(await next.getByLabel('Correction').inputValue()).toBe('None yet');
    await clip(next, 'Notes');
    const waiting = next.waitForEvent('download');
    await next.getByRole('link', { name: 'Download the log' }).click();
    const file = await (await waiting).path();
    const log = JSON.parse(readFileSync(file, 'utf8'));
    expect(log.entries.map((entry: { action: { do: string } }) => entry.action.do)).toEqual(['start', 'operate']);

    await next.goto(site.url);
    await next.getByText(/^Go on, \d/).waitFor();
    await next.locator('input[type=file]').setInputFiles(file);
    await next.getByText('All 2 steps came out the same.').waitFor();
    log.entries[1].tenths = 7;
    await next
      .locator('input[type=file]')
      .setInputFiles({ name: 'log.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(log)) });
    await next.getByText(/things? came out differently/).waitFor();
    await next
      .locator('input[type=file]')
      .setInputFiles({ name: 'log.json', mimeType: 'application/json', buffer: Buffer.from('{"header": 1}') });
    await next.getByText(/not a log of ours/).waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  test('a double click on a button is one action, and two slow clicks are two', async () => {
    const { page, errors, close } = await visit(site);
    await takeJob(page);
    await clip(page, 'Safety');
    const chocks = page.getByRole('switch', { name: /Wheels chocked/ });
    await chocks.dblclick();
    expect(await chocks.getAttribute('aria-checked')).toBe('true');
    await page.waitForTimeout(800);
    await chocks.click();
    await page.waitForTimeout(800);
    expect(await chocks.getAttribute('aria-checked')).toBe('false');
    expect(errors).toEqual([]);
    await close();
  });

  test('where the browser keeps nothing the page says so and works on', async () => {
    const { page, close } = await visit(site);
    await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'indexedDB'));
    await page.addInitScript(() => Object.defineProperty(globalThis, 'indexedDB', { get: () => undefined }));
    await page.reload();
    await page.getByText('This browser keeps nothing').waitFor();
    await takeJob(page);
    await button(page, /^Key switch: run/).click();
    await slip(page, /charge lamp/i);
    await close();
  });
});

describe('accessibility of each screen', () => {
  test.each(['light', 'dark'] as const)('axe finds nothing to mend, %s', async (colorScheme) => {
    const { page, errors, close } = await visit(site, { colorScheme, reducedMotion: 'reduce' });
    await page.locator('.card').first().waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('link', { name: JOB }).click();
    await button(page, 'Take the job').waitFor();
    expect(await violations(page)).toEqual([]);
    await button(page, 'Take the job').click();
    await drawnPlace(page, 'cab dash face');
    await button(page, 'Dial').click();
    expect(await violations(page)).toEqual([]);
    await button(page, 'Schematic').click();
    for (const tab of ['Order', 'Notes', 'Suspects', 'Safety', 'Operator', 'Write-up']) {
      await clip(page, tab);
      expect(await violations(page)).toEqual([]);
    }
    await button(page, 'Manual').click();
    await page.getByRole('combobox', { name: 'Chapters' }).selectOption('connectors');
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await button(page, 'Keys and help').click();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
    await button(page, 'Settings').click();
    expect(await violations(page)).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });
});

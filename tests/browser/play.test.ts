/** A whole job through the real page: with the mouse, with the keyboard alone, and with the window closed in between. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { button, clickSpot, drawnAt, goTo, inHere, pressOn, slip, spot } from './hands.ts';
import { openSite, type Site, visit, watch } from './support.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

const JOB = /Cranks slowly/;
/** Where things are drawn, units of the drawing. */
const KEY_START = [992, 640] as const;
const YARD_BATTERY_BOX = [1240, 620] as const;

async function takeJob(page: Page): Promise<void> {
  await page.getByRole('link', { name: JOB }).click();
  await button(page, 'Take the job').click();
  await page.locator('.stage-host canvas').waitFor();
}

async function clip(page: Page, tab: string): Promise<void> {
  if ((await page.locator('.clipboard').count()) === 0) await button(page, 'Clipboard').click();
  await page.getByRole('tab', { name: tab }).click();
}

async function secure(page: Page, names: RegExp[]): Promise<void> {
  await clip(page, 'Safety');
  for (const name of names) await page.getByRole('switch', { name }).click();
  await page.keyboard.press('Escape');
}

/** The drawing of a place is there when its name is in the bar and the canvas has been painted for it. */
async function at(page: Page, place: string): Promise<void> {
  await page.locator('.figure', { hasText: place }).waitFor();
  await page.waitForTimeout(900);
}

/** Grading weighs every reading against all that could be wrong; it is done beside the page. */
const GRADED = { timeout: 150_000 };

describe('a job from the board to the debrief', () => {
  test('with the mouse, on the drawing', { timeout: 400_000 }, async () => {
    const { page, errors, close } = await visit(site);
    await takeJob(page);
    await at(page, 'cab dash face');
    await secure(page, [/Wheels chocked/, /Everybody clear/]);

    await clickSpot(page, ...KEY_START);
    expect(await slip(page, /charge lamp/i)).toMatch(/chatters|clunk/i);
    await button(page, /^Key switch: off/).click();

    await button(page, 'Whole machine').click();
    await page.waitForTimeout(900);
    await clickSpot(page, ...YARD_BATTERY_BOX);
    await at(page, 'battery box');
    await secure(page, [/Eye protection/, /No flame/, /Rings|jewelry/i]);
    await button(page, /open battery box cover/i)
      .first()
      .click();
    await page.waitForTimeout(900);

    await dragLead(page, 'red', ...drawnAt('BATT', 'G1.+'));
    await dragLead(page, 'black', ...drawnAt('BATT', 'G1.-'));
    await button(page, 'Dial').click();
    await page.locator('#dial').press('ArrowRight');
    await button(page, /^Read \d/).click();
    expect(await slip(page, /Meter: /)).toMatch(/Meter: (9|10|11)\.\d\d V, red on G1 terminal \+/);
    await button(page, 'Hide dial').click();

    await chargeAndProve(page);
    await writeUp(page);
    expect(errors).toEqual([]);
    await page.getByRole('heading', { name: 'Debrief' }).waitFor();
    await page.locator('.verdict').waitFor(GRADED);
    expect(await page.locator('.verdict').textContent()).toMatch(/Pass|Not yet/);
    expect(await violations(page)).toEqual([]);
    await close();
  });

  test('with the keyboard alone', { timeout: 400_000 }, async () => {
    const { page, errors, close } = await visit(site);
    const keys = page.keyboard;
    await pressOn(page, /Cranks slowly/);
    await page.waitForURL(/#\/job\//);
    await pressOn(page, /^Take the job/);
    await page.locator('.stage-host canvas').waitFor();
    await keys.press('4');
    await pressOn(page, /Wheels chocked/);
    await pressOn(page, /Everybody clear/);
    await keys.press('Escape');
    await inHere(page, /^Key switch: hold at start/);
    await slip(page, /charge lamp/i);
    await inHere(page, /^Key switch: off/);
    await inHere(page, /^Walk to$/);
    await pressOn(page, /^Walk to battery box/);
    await page.locator('.figure', { hasText: 'battery box' }).waitFor();
    await inHere(page, /open battery box cover/i);
    await keys.press('i');
    await pressOn(page, /^Dial$/);
    await goTo(page, /^Dial$/);
    await keys.press('ArrowRight');
    await inHere(page, /^G1 Battery/);
    await goTo(page, /^G1 terminal \+.*red lead here/);
    await keys.press('r');
    await goTo(page, /^G1 terminal -.*black lead here/);
    await keys.press('b');
    await pressOn(page, /^Read \d/);
    expect(await slip(page, /Meter: /)).toMatch(/1\d\.\d\d V/);

    await keys.press('2');
    await page.locator('.note-value').first().waitFor();
    expect(await page.locator('.note-reading').first().textContent()).toMatch(/battery box/);
    await keys.press('6');
    await goTo(page, /^Cause/);
    await keys.type('G1');
    await pressOn(page, /^G1 Battery/);
    await goTo(page, /^What was wrong with it/);
    await keys.type('disch');
    await pressOn(page, /^Hand in the write-up/);
    await pressOn(page, /^Handed to the lead hand/);
    await pressOn(page, /^Yes, close it/);
    await page.getByRole('heading', { name: 'Debrief' }).waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  test('by touch on a tablet held upright: both leads on, and a reading', async () => {
    const { page, errors, close } = await visit(site, { viewport: { width: 768, height: 1024 }, hasTouch: true });
    await page.getByRole('link', { name: JOB }).tap();
    await button(page, 'Take the job').tap();
    await at(page, 'cab dash face');
    await button(page, 'Whole machine').tap();
    await page.waitForTimeout(900);
    await tapSpot(page, ...YARD_BATTERY_BOX);
    await at(page, 'battery box');
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
    expect(await slip(page, /Meter: /)).toMatch(/Meter: 1\d\.\d\d V, red on G1 terminal \+/);
    expect(errors).toEqual([]);
    await close();
  });
});

async function tapSpot(page: Page, x: number, y: number): Promise<void> {
  const to = await spot(page, x, y);
  await page.touchscreen.tap(to.x, to.y);
}

/** Takes a lead from the instrument and lets it go over a spot of the drawing. */
async function dragLead(page: Page, lead: 'red' | 'black', x: number, y: number): Promise<void> {
  const probe = await page.locator(`.probe-${lead}`).boundingBox();
  if (probe === null) throw new Error('the instrument is not on screen');
  const to = await spot(page, x, y);
  await page.mouse.move(probe.x + 30, probe.y + 20);
  await page.mouse.down();
  await page.mouse.move(to.x - 30, to.y + 20, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
}

async function chargeAndProve(page: Page): Promise<void> {
  await page.locator('.leads .plain').first().click();
  await page.locator('.leads .plain').first().click();
  await button(page, /^Battery disconnect switch: off/).click();
  await button(page, /^G1 Battery/).click();
  await button(page, 'Wires and repairs').click();
  await button(page, /^Charge: G1/).click();
  await button(page, /^Battery disconnect switch: on/).click();
  await button(page, /^Close up again: open battery box cover/).click();
  await button(page, 'Walk to').first().click();
  await button(page, /^Walk to cab dash face/).click();
  await at(page, 'cab dash face');
  await secure(page, [/Everybody clear/]);
  await button(page, /^Prove the repair/).click();
  expect(await slip(page, /complaint/)).toMatch(/The complaint is gone/);
  await button(page, /^Key switch: off/).click();
}

async function writeUp(page: Page): Promise<void> {
  await secure(page, [/Wheels chocked/]);
  await clip(page, 'Write-up');
  await page.getByLabel('Complaint, in your own words').fill('Clicks, does not crank');
  await page.getByLabel('Cause: what it was').fill('G1');
  await page
    .locator('.found')
    .getByRole('button', { name: /^G1 Battery/ })
    .click();
  await page.getByLabel('What was wrong with it').selectOption('discharged');
  await page.getByLabel('Correction: what you did').fill('Battery charged and tested');
  await button(page, 'Hand in the write-up').click();
  expect(await page.locator('.all-clear').textContent()).toMatch(/Everything is back/);
  await button(page, 'Repaired').click();
  await button(page, 'Yes, close it').click();
}

describe('work is not lost', () => {
  test('a closed window goes on where it was, and the log comes out the same when it is read in', async () => {
    const { page, errors, close } = await visit(site);
    await takeJob(page);
    await button(page, /^Key switch: run/).click();
    await slip(page, /charge lamp/i);
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
    await clip(next, 'Notes');
    const waiting = next.waitForEvent('download');
    await next.getByRole('link', { name: 'Download the log' }).click();
    const file = await (await waiting).path();
    const log = JSON.parse(readFileSync(file, 'utf8'));
    expect(log.entries.map((entry: { action: { do: string } }) => entry.action.do)).toEqual(['start', 'operate']);

    await next.goto(site.url);
    await next.getByText('Under way').waitFor();
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
    await at(page, 'cab dash face');
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

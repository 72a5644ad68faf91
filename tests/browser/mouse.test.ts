/** A whole job with the mouse alone: on the drawing, on the instrument, in the list and on the clipboard. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { button, clip, drawnPlace, JOB, KEY_START, slip, YARD_BATTERY_BOX } from './hands.ts';
import { Mouse } from './mouse.ts';
import { openSite, type Site, visit } from './support.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Grading weighs every reading against all that could be wrong; it is done beside the page. */
const GRADED = { timeout: 200_000 };

/** Where `V DC` is printed on the dial, parts of its width and height. */
const VOLTS_ON_DIAL = { x: 0.35, y: 0.1 };

test('a student repairs a machine with the mouse alone', { timeout: 400_000 }, async () => {
  const { page, errors, close } = await visit(site);
  const mouse = new Mouse(page);
  await mouse.click(page.getByRole('link', { name: JOB }));
  await mouse.click(button(page, 'Take the job'));
  await drawnPlace(page, 'cab dash face');
  await seeTheComplaint(mouse);
  await measure(mouse);
  await charge(mouse);
  await prove(mouse);
  await writeUp(mouse);

  await page.getByRole('heading', { name: 'Debrief' }).waitFor();
  await page.locator('.verdict').waitFor(GRADED);
  expect(await page.locator('.verdict').textContent()).toMatch(/^Pass [\d.]+ of 100 points$/);
  expect(await page.locator('main').textContent()).toContain('Closed as: Repaired');
  console.info(`a job by ${mouse.clicks} clicks`);
  expect(errors).toEqual([]);
  expect(await violations(page)).toEqual([]);
  await close();
});

async function secure(mouse: Mouse, names: RegExp[]): Promise<void> {
  await clip(mouse.page, 'Safety', (target) => mouse.click(target));
  for (const name of names) await mouse.click(mouse.page.getByRole('switch', { name }));
  await mouse.click(mouse.page.locator('.clipboard').getByRole('button', { name: 'Close' }));
}

async function seeTheComplaint(mouse: Mouse): Promise<void> {
  await secure(mouse, [/Wheels chocked/, /Everybody clear/]);
  await mouse.clickDrawing(...KEY_START);
  expect(await slip(mouse.page, /charge lamp/i)).toMatch(/chatters|clunk/i);
  await mouse.click(button(mouse.page, /^Key switch: off/));
}

async function measure(mouse: Mouse): Promise<void> {
  const { page } = mouse;
  await mouse.click(button(page, 'Whole machine'));
  await page.waitForTimeout(900);
  await mouse.clickDrawing(...YARD_BATTERY_BOX);
  await drawnPlace(page, 'battery box');
  await secure(mouse, [/Eye protection/, /No flame/, /Rings|jewelry/i]);
  await mouse.click(button(page, /open battery box cover/i).first());
  await page.waitForTimeout(900);
  await mouse.dragLead('red', 'BATT', 'G1.+');
  await mouse.dragLead('black', 'BATT', 'G1.-');
  await mouse.click(button(page, 'Dial'));
  await mouse.click(page.locator('#dial svg'), VOLTS_ON_DIAL);
  await mouse.click(button(page, /^Read \d/));
  expect(await slip(page, /Meter: /)).toMatch(/Meter: (9|10|11)\.\d\d V, red on .*G1.* terminal \+/);
  await mouse.click(button(page, 'Dial'));
}

async function charge(mouse: Mouse): Promise<void> {
  const { page } = mouse;
  await mouse.click(button(page, 'Red lead: Take off'));
  await mouse.click(button(page, 'Black lead: Take off'));
  await mouse.click(button(page, /^Battery disconnect switch: off/));
  await mouse.click(page.locator('[data-group="G1"] .group-head'));
  await mouse.click(button(page, 'Wires and repairs'));
  await mouse.click(button(page, /^Charge: .*G1/));
  await mouse.click(button(page, /^Battery disconnect switch: on/));
  await mouse.click(button(page, /^Close the battery box cover/));
}

async function prove(mouse: Mouse): Promise<void> {
  const { page } = mouse;
  await mouse.click(button(page, 'Walk to').first());
  await mouse.click(button(page, /^Walk to cab dash face/));
  await drawnPlace(page, 'cab dash face');
  await secure(mouse, [/Everybody clear/]);
  await mouse.click(button(page, /^Prove the repair/));
  expect(await slip(page, /complaint/)).toMatch(/The complaint is gone/);
  await mouse.click(button(page, /^Key switch: off/));
  await secure(mouse, [/Wheels chocked/]);
}

/** What was repaired is offered as the cause before anything is typed. */
async function writeUp(mouse: Mouse): Promise<void> {
  const { page } = mouse;
  await clip(page, 'Write-up', (target) => mouse.click(target));
  await mouse.click(page.locator('.found').getByRole('button', { name: /G1/ }));
  await chooseMode(page);
  await mouse.click(button(page, 'Hand in the write-up'));
  expect(await page.locator('.all-clear').textContent()).toMatch(/Everything is back/);
  await mouse.click(button(page, 'Repaired'));
  await mouse.click(button(page, 'Yes, close it'));
}

/** The list that a select unfolds is the browser's own, outside the page, where no test can click. */
async function chooseMode(page: Page): Promise<void> {
  await page.getByLabel('What was wrong with it').selectOption('discharged');
}

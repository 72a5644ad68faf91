/** The meter's dial and buttons by keyboard: what they are called, what they are at, and what the display says of it. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { button, drawnPlace, JOB } from './hands.ts';
import { openSite, type Site, visit } from './support.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

test('functions and buttons of the meter by keyboard', { timeout: 120_000 }, async () => {
  const { page, errors, close } = await visit(site);
  await page.getByRole('link', { name: JOB }).click();
  await button(page, 'Take the job').click();
  await drawnPlace(page, 'cab dash face');
  await button(page, 'Dial').press('Enter');
  const dial = page.locator('#dial');
  const names: (string | null)[] = [];
  for (let i = 0; i < 7; i++) {
    names.push(await dial.getAttribute('aria-valuetext'));
    await dial.press('ArrowRight');
  }
  expect(names).toEqual(['off', 'volts DC', 'ohms', 'continuity', 'diode test', 'amperes', 'volts DC, low impedance']);
  for (let i = 0; i < 5; i++) await dial.press('ArrowLeft');
  expect(await dial.getAttribute('aria-valuetext')).toBe('volts DC');

  const buttons = page.getByRole('group', { name: 'Buttons of the meter' });
  const at = (name: RegExp) => buttons.getByRole('button', { name });
  const display = page.locator('.lcd[role="img"]');
  await at(/^HOLD/).press('Enter');
  await at(/^MIN\/MAX\. .*100 ms/).press('Enter');
  await at(/^RANGE\. Range: automatic/).press('Enter');
  await at(/^RANGE\. Range: 6 V/).press('Enter');
  await at(/^RANGE\. Range: 60 V/).waitFor();
  for (const name of [/^HOLD/, /^MIN\/MAX/, /^RANGE/]) expect(await at(name).getAttribute('aria-pressed')).toBe('true');
  expect(await display.getAttribute('aria-label')).toMatch(/HOLD 60 V$/);
  expect(await page.locator('.lcd[role="img"]').textContent()).toContain('min and max of 100 ms');

  // Neither lead is on anything: there is nothing to take off.
  await at(/^ZERO/).press('Enter');
  expect(await at(/^ZERO/).getAttribute('aria-pressed')).toBe('false');
  await page.getByText('Both leads must be on something first.').first().waitFor();

  // The dial lets go of all but Hold; on ohms there are no minimum and maximum.
  await dial.press('ArrowRight');
  expect(await at(/^RANGE/).getAttribute('aria-pressed')).toBe('false');
  expect(await at(/^MIN\/MAX/).getAttribute('aria-disabled')).toBe('true');
  expect(await at(/^HOLD/).getAttribute('aria-pressed')).toBe('true');
  const tool = await page.locator('#tool').boundingBox();
  expect((tool?.y ?? 0) + (tool?.height ?? 0)).toBeLessThan(768);
  expect(errors).toEqual([]);
  expect(await violations(page)).toEqual([]);
  await close();
});

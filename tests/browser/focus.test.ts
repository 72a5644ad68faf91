/** Whoever works by keys always knows where they are: what closes or goes gives the focus back. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { slip } from './hands.ts';
import { Keyboard } from './keyboard.ts';
import { openSite, type Site, type Visit, visit } from './support.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

async function shop(): Promise<Visit & { keys: Keyboard }> {
  const visitor = await visit(site);
  const keys = await Keyboard.of(visitor.page);
  await keys.press('Tab');
  await keys.do(/Cranks slowly/);
  await keys.do(/^Take the job/);
  await visitor.page.locator('.stage-host canvas').waitFor();
  return { ...visitor, keys };
}

test.each([
  ['the clipboard', 'c', /^Clipboard: Notes$/],
  ['a page of the clipboard', '5', /^Clipboard: Operator$/],
  ['the manual', 'm', /^Search the manual$/],
  ['the schematic', 's', /^Schematic: 1 · /],
] as const)('%s takes the focus, keeps it between its edges and gives it back', async (_, key, first) => {
  const { keys, errors, close } = await shop();
  await keys.key('k');
  await keys.to(/^Key switch: run/);
  await keys.key(key);
  expect((await keys.focus()).name).toMatch(first);
  await keys.press('Tab');
  await keys.press('Tab');
  await keys.held('inside');
  await keys.key('Escape');
  expect((await keys.focus()).name).toMatch(/^Key switch: run/);
  expect(errors).toEqual([]);
  await close();
});

test('a dialog holds the focus until it is closed', async () => {
  const { page, keys, errors, close } = await shop();
  await keys.key('g');
  const { name } = await keys.focus();
  await keys.press('?');
  await page.getByRole('dialog').waitFor();
  await keys.held('in the dialog');
  for (let i = 0; i < 6; i++) {
    await keys.press('Tab');
    const inside = await page.evaluate(
      () => document.activeElement === document.body || document.activeElement?.closest('dialog') !== null,
    );
    expect(inside).toBe(true);
  }
  await keys.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await keys.held('after the dialog');
  expect((await keys.focus()).name).toBe(name);
  expect(errors).toEqual([]);
  await close();
});

test('each key of the help leads where the help says', async () => {
  const { keys, errors, close } = await shop();
  const leads: [key: string, to: RegExp][] = [
    ['h', /^Here: cab dash face$/],
    ['w', /^Walk to$/],
    ['k', /^Controls$/],
    ['g', /^Look and ask$/],
    ['i', /^Multimeter$/],
    ['2', /^Clipboard: Notes$/],
  ];
  for (const [key, to] of leads) {
    await keys.key(key);
    expect((await keys.focus()).name, key).toMatch(to);
  }
  await keys.key('e');
  await keys.key('l');
  expect((await keys.focus()).role).toBe('status');
  expect(errors).toEqual([]);
  await close();
});

test('what was refused has its remedy beside it, and the focus stays when that is done', async () => {
  const { page, keys, errors, close } = await shop();
  await keys.key('w');
  await keys.do(/^Walk to under-seat box/);
  await keys.key('h');
  await keys.do(/^Tilt seat/);
  await keys.key('k');
  await keys.do(/^Operator seat: occupied/);
  await slip(page, /Can't do that\. The seat is tilted up/);
  await keys.key('l');
  await keys.do(/^Close the under-seat box lid/);
  await slip(page, /^Close the under-seat box lid.*Done/);
  expect((await keys.focus()).role).toBe('status');
  expect(errors).toEqual([]);
  await close();
});

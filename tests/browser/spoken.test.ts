/** What a screen reader is told: each screen in order, pictures by name, and what happens as it happens. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { button } from './hands.ts';
import { Keyboard } from './keyboard.ts';
import { openSite, type Site, visit } from './support.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

const JOB = /Cranks slowly/;

/** From now on, every text that a live region of the page comes to hold. */
async function listen(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const said: string[] = [];
    const observer = new MutationObserver((changes) => {
      const regions = changes.map(({ target }) => {
        const at = target instanceof Element ? target : target.parentElement;
        return at?.closest('[role="status"], [role="alert"], [aria-live]');
      });
      for (const region of new Set(regions)) {
        const text = region?.textContent?.replaceAll(/\s+/g, ' ').trim() ?? '';
        if (text !== '') said.push(text);
      }
    });
    observer.observe(document.body, { childList: true, characterData: true, subtree: true });
    Object.assign(globalThis, { said });
  });
  return async () => {
    await page.waitForTimeout(150);
    return page.evaluate(() => (globalThis as unknown as { said: string[] }).said.splice(0));
  };
}

async function intoShop(page: Page): Promise<void> {
  await page.getByRole('link', { name: JOB }).click();
  await button(page, 'Take the job').click();
  await page.locator('.stage-host canvas').waitFor();
}

test('a reading, a refusal and a notice are spoken when they come, and again when they come again', async () => {
  const { page, errors, close } = await visit(site);
  await intoShop(page);
  const said = await listen(page);
  const keys = await Keyboard.of(page);
  await keys.key('e');
  expect((await said()).join()).toMatch(/Can't do that.*Both leads/);
  await keys.key('e');
  expect((await said()).join(), 'the same once more').toMatch(/Can't do that.*Both leads/);

  await keys.key('k');
  await keys.do(/^Key switch: hold at start/);
  // Chocks are not set: that is called out.
  expect((await said()).join()).toMatch(/charge lamp is lit.*lead hand calls over/i);
  await keys.key('k');
  await keys.do(/^Key switch: run/);
  await keys.key('w');
  await keys.do(/^Walk to battery box/);
  await keys.key('h');
  await keys.do(/^Open battery box cover/i);
  await keys.key('i');
  await keys.do(/^Dial$/);
  await keys.to(/^Dial$/);
  await keys.press('ArrowRight');
  expect((await said()).join()).toMatch(/Dial: volts DC/);
  await keys.key('f');
  await keys.do(/\bG1\b/);
  await keys.to(/terminal \+.*red lead here/);
  await keys.key('r');
  expect((await said()).join()).toMatch(/Red lead on .*G1/);
  await keys.to(/terminal -.*black lead here/);
  await keys.key('b');
  expect((await said()).join()).toMatch(/Black lead on .*G1/);
  for (const again of ['once', 'twice']) {
    await keys.key('e');
    expect((await said()).join(), again).toMatch(/Meter: -?1\d\.\d\d V, red on /);
  }
  await keys.key('l');
  expect((await keys.focus()).role).toBe('status');
  expect(await violations(page)).toEqual([]);
  expect(errors).toEqual([]);
  await close();
});

test('what opens, is found or is asked is spoken', async () => {
  const { page, errors, close } = await visit(site);
  expect(await mainName(page)).toBe('Job board');
  await intoShop(page);
  const said = await listen(page);
  const keys = await Keyboard.of(page);
  await keys.key('s');
  expect((await said()).join()).toMatch(/Schematic open: 1 · .*\. List put away\./);
  await keys.to(/^Find on the drawing/);
  await keys.type('K1');
  // The start relay is drawn on the second sheet only.
  expect((await said()).at(-1)).toMatch(/^Nothing here by that name\. Enter looks on the other sheets/);
  await keys.press('Enter');
  expect((await said()).join()).toMatch(/\(K1\): marked on sheet 2 · /);
  await page.waitForTimeout(300);
  await keys.press('Enter');
  expect((await said()).join()).toMatch(/\(K1\): marked on the schematic\./);
  await keys.type('zz');
  expect((await said()).at(-1)).toMatch(/^Nothing here by that name/);
  await keys.key('Escape');
  await keys.key('Escape');
  expect((await said()).join()).toMatch(/Schematic closed\. List back\./);

  await keys.key('m');
  await keys.to(/^Search the manual/);
  await keys.type('K1');
  expect((await said()).at(-1)).toMatch(/^\d+ places in the manual/);
  await keys.key('Escape');

  await keys.key('5');
  await keys.do(/^Ask: .+\? \d/);
  const answer = await page.locator('.ask-answer').textContent();
  expect((await keys.focus()).name).toBe(answer);
  expect((await said()).join()).toContain(answer?.slice(1, -1));
  expect(await violations(page)).toEqual([]);
  expect(errors).toEqual([]);
  await close();
});

test('Tab comes to the page of the clipboard that is open, and to the question when a job is closed', async () => {
  const { page, errors, close } = await visit(site);
  await intoShop(page);
  const keys = await Keyboard.of(page);
  for (const [key, tab] of [
    ['4', /^Safety/],
    ['2', /^Notes/],
    ['6', /^Write-up/],
  ] as const) {
    await keys.key(key);
    await keys.press('Tab');
    await keys.press('Tab');
    const { role, name } = await keys.focus();
    expect(role).toBe('tab');
    expect(name).toMatch(tab);
  }
  await keys.do(/^Cannot duplicate/);
  expect((await keys.focus()).role).toBe('alertdialog');
  const described = await page.getByRole('alertdialog').evaluate((dialog) => {
    const id = dialog.getAttribute('aria-describedby') ?? '';
    return document.getElementById(id)?.textContent;
  });
  expect(described).toMatch(/^Close the job as “Cannot duplicate/);
  await keys.do(/^Not yet/);
  expect((await keys.focus()).name).toMatch(/^Cannot duplicate/);
  expect(errors).toEqual([]);
  await close();
});

const mainName = (page: Page): Promise<string | null> => page.locator('main').getAttribute('aria-label');

test('each screen has a name of its own and reads from the top down', async () => {
  const { page, errors, close } = await visit(site);
  await page.locator('.card').first().waitFor();
  await named(page, /^Job board · /);
  await inOrder(page, [
    /heading "Job board" \[level=1\]/,
    /heading "Band 1/,
    /link "Job 01 Cranks slowly/,
    /heading "Band 4/,
  ]);
  await page.getByRole('link', { name: JOB }).click();
  await button(page, 'Take the job').waitFor();
  await named(page, /^Work order: Cranks slowly.* · /);
  await inOrder(page, [
    /heading "Cranks slowly/,
    /term: Operator says/,
    /heading "Before you begin"/,
    /button "Take the job"/,
  ]);
  await button(page, 'Take the job').click();
  await page.locator('.stage-host canvas').waitFor();
  await named(page, /Cranks slowly.* · /);
  // Laid aside it still has its leads; taken up it has its display.
  await inOrder(page, [/region "Multimeter"/, /button "Pick it up"/, /button "Red loose/, /button "Black loose/]);
  await page.keyboard.press('i');
  await page.keyboard.press('s');
  await page.keyboard.press('4');
  // The list makes room for the schematic until it is asked for.
  await page.keyboard.press('h');
  const shop = [
    /heading "Cranks slowly/,
    /term: Place/,
    /complementary "Here: cab dash face"/,
    /button "Walk to"/,
    /button "Key switch: off" \[pressed\]/,
    /button "Prove the repair/,
    /heading "To be seen and heard now"/,
    /img "Drawing of cab dash face\. .*list “Here”\. Beside it the schematic/,
    /region "Multimeter"/,
    /img "Display: /,
    /complementary "Clipboard"/,
    /tab "Safety" \[selected\]/,
    /switch "Wheels chocked/,
  ];
  await inOrder(page, shop);
  await picturesNamed(page);
  expect(errors).toEqual([]);
  await close();
});

/** Lines of the tree in a message, enough to find one's way. */
const MOST_TOLD = 60;

async function named(page: Page, title: RegExp): Promise<void> {
  await expect.poll(() => page.title()).toMatch(title);
}

/** Lines of the tree that a screen reader reads, each of them below the one before. */
async function inOrder(page: Page, lines: RegExp[]): Promise<void> {
  const tree = (await page.locator('body').ariaSnapshot()).split('\n');
  let from = 0;
  for (const line of lines) {
    const at = tree.findIndex((text, i) => i >= from && line.test(text));
    expect(at, `${line} among ${tree.slice(from, from + MOST_TOLD).join('\n')}`).toBeGreaterThanOrEqual(0);
    from = at + 1;
  }
}

/** A picture says what it is, or is hidden because the words beside it say so. */
async function picturesNamed(page: Page): Promise<void> {
  const nameless = await page.evaluate(() =>
    [...document.querySelectorAll('svg, img, canvas')]
      .filter((picture) => picture.closest('[aria-hidden="true"]') === null)
      .filter((picture) => !picture.closest('[role="img"]')?.getAttribute('aria-label'))
      .map((picture) => picture.outerHTML.slice(0, 120)),
  );
  expect(nameless).toEqual([]);
}

describe('what the drawing shows', () => {
  test('stands in the list in words', async () => {
    const { page, errors, close } = await visit(site);
    await intoShop(page);
    const now = page.getByRole('region', { name: 'To be seen and heard now' });
    expect(await now.textContent()).not.toMatch(/is lit/);
    await button(page, /^Key switch: run/).click();
    await now.getByText('The charge lamp is lit.').waitFor();
    await button(page, /^Key switch: off/).click();
    await now
      .getByText(/is lit/)
      .first()
      .waitFor({ state: 'detached' });
    expect(errors).toEqual([]);
    await close();
  });
});

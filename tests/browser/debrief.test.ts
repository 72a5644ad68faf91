/** The debrief shows the grade that the command line gives for the same log, in words, on any screen and on paper. */
import { execFile } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { jobOf } from '../../src/cli/library.ts';
import { CRITERIA, type Grade } from '../../src/grading/index.ts';
import { type Action, Attempt, isRefusal, type Log } from '../../src/job/index.ts';
import { violations } from './axe.ts';
import { openSite, type Site, visit } from './support.ts';

const project = fileURLToPath(new URL('../..', import.meta.url));

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Grading weighs every step against all that could be wrong; two of them run at once on a small machine. */
const PATIENCE = { timeout: 280_000 };

/** The job's own way, with a step left out, a part replaced for nothing, and the same reading twice. */
function flawed(job: string): Log {
  const { model, job: spec } = jobOf(job);
  const attempt = new Attempt(model, spec);
  const path = spec.path.flatMap((action): Action[] => {
    if (action.do === 'precaution' && action.id === 'chocks') return [];
    if (action.do === 'verify') return [];
    if (action.do === 'lead' && action.lead === 'black' && action.point !== null)
      return [action, { do: 'read' }, { do: 'read' }];
    if (action.do === 'unplug' && action.connector === 'X3')
      return [action, { do: 'repair', verb: 'clean', target: 'X:X3.3' }];
    return [action];
  });
  for (const action of path) {
    const result = attempt.act(action);
    // The proof that is left out would have moved the key.
    if (isRefusal(result) && result.code !== 'already')
      throw new Error(`${JSON.stringify(action)}: ${JSON.stringify(result)}`);
  }
  return attempt.log;
}

async function gradeByCommand(file: string): Promise<Grade> {
  const run = promisify(execFile);
  const { stdout } = await run('npm', ['run', '-s', 'ohmyard', '--', 'grade', file, '--json'], { cwd: project });
  return JSON.parse(stdout);
}

async function readIn(page: Page, file: string): Promise<void> {
  await page.locator('.file input').setInputFiles(file);
  await page.getByText(/steps came out the same/).waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Look at this attempt' }).click();
  await page.getByRole('heading', { name: 'Debrief' }).waitFor();
}

const pointsOf = async (page: Page, criterion: string): Promise<string | null> =>
  page.locator(`.marks-table [data-criterion=${criterion}] .points-cell`).textContent();

const SCREENS = [
  [1366, 768],
  [1024, 600],
  [820, 1180],
  [390, 800],
] as const;

describe('the debrief of an attempt', () => {
  test('says what the command line says', { timeout: 600_000 }, async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'ohmyard-')), 'attempt.json');
    writeFileSync(file, JSON.stringify(flawed('job-05')));
    const { page, errors, close } = await visit(site);
    await readIn(page, file);
    expect(await page.locator('.working').textContent()).toContain('Working through your log…');

    // The page itself stays free meanwhile.
    expect(await page.getByRole('heading', { name: 'What you did' }).isVisible()).toBe(true);
    await page.locator('.verdict').waitFor(PATIENCE);
    const grade = await gradeByCommand(file);

    for (const criterion of CRITERIA) {
      const { points, of } = grade.criteria[criterion];
      expect(await pointsOf(page, criterion), criterion).toBe(`${points} of ${of}`);
    }
    expect(await pointsOf(page, 'total')).toBe(`${grade.total} of 100`);
    const verdict = { pass: 'Pass', 'not-yet': 'Not yet', fail: 'Fail' }[grade.result];
    expect(await page.locator('.verdict').textContent()).toBe(`${verdict} ${grade.total} of 100 points`);
    expect(await page.locator('.finding').count()).toBe(grade.findings.length);
    await saysItInWords(page);
    await replays(page);
    await fits(page);
    expect(errors).toEqual([]);
    await close();
  });
});

async function saysItInWords(page: Page): Promise<void> {
  const text = (await page.locator('main').textContent()) ?? '';
  expect(text).toMatch(/At \d+\.\d min:/);
  expect(text).toContain('It told you nothing new.');
  expect(text).toContain('Wheels chocked before the key goes to start.');
  expect(text).toContain('You cleaned the frame to engine connector (X3) pin 3. What you knew then pointed there with');
  expect(text).toContain(
    'Wire 206B VT from cab bulkhead connector (X1) pin 2 to frame to engine connector (X3) pin 3: open',
  );
  expect(text).not.toMatch(/\{\{|undefined|NaN|hypothes|belief|regret|\bprior\b|entropy|probab/i);
  expect(await page.locator('.stairs tbody tr').count()).toBeGreaterThan(20);
}

/** The machine is drawn at the step that is shown: the place where the student stood then. */
async function replays(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Go through it again' }).click();
  const drawing = page.locator('.replay-stage canvas');
  await drawing.waitFor();
  const frame = await page.locator('.replay-stage').boundingBox();
  await expect.poll(async () => (await drawing.boundingBox())?.width).toBeGreaterThan((frame?.width ?? 0) - 10);
  await page.getByRole('slider').fill('8');
  await page.getByRole('button', { name: 'Later' }).click();
  await page.getByText(/^Step 9 of/).waitFor();
  await expect.poll(() => page.getByRole('img', { name: /^Drawing of/ }).count()).toBe(1);
}

async function fits(page: Page): Promise<void> {
  for (const [width, height] of SCREENS) {
    await page.setViewportSize({ width, height });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(over, `${width} × ${height}`).toBeLessThanOrEqual(0);
  }
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await page.locator(`html[data-theme=${colorScheme}]`).waitFor();
    expect(await violations(page), colorScheme).toEqual([]);
  }
  for (const format of ['A4', 'Letter']) {
    const pdf = await page.pdf({ format });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g), format).toHaveLength(2);
  }
}

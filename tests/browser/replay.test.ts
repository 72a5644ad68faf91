/**
 * The same actions give the same log, bit for bit, in the browser and here: built and made small as the page is, on the
 * machine that a statechart keeps there, and on plain arrays here.
 */
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Action } from '../../src/job/index.ts';
import { anyAttempts, CHOICE } from '../job/any-actions.ts';
import { attemptAt, JOB_IDS, theJob } from '../job/at-work.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { worked } from '../support/worked.ts';
import { browserPath } from './ensure-browser.ts';

const ACTIONS = 50;
const ATTEMPTS = process.env.OHMYARD_RELEASE === undefined ? 30 : 300;
/** Attempts worked between two answers of the page. */
const AT_ONCE = 12;

let browser: Browser;
let page: Page;

async function engineCode(): Promise<string> {
  const output = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: true,
      target: 'es2022',
      lib: { entry: fileURLToPath(new URL('./engine-page.ts', import.meta.url)), formats: ['iife'], name: 'engine' },
    },
  });
  const [first] = Array.isArray(output) ? output : [output];
  if (!('output' in first)) throw new Error('The build watches, and gives no code.');
  return first.output[0].code;
}

beforeAll(async () => {
  const code = await engineCode();
  browser = await chromium.launch({ executablePath: await browserPath(), args: ['--no-sandbox'] });
  page = await browser.newPage();
  await page.addScriptTag({ content: code });
});
afterAll(() => browser.close());

const there = (attempts: [job: string, actions: Action[]][]) =>
  page.evaluate((list) => list.map(([job, actions]) => window.work(job, actions)), attempts);

const here = ([job, actions]: [string, Action[]]) => worked(attemptAt(job), actions);

/** The first of the attempts that `tests/job/any-actions.test.ts` makes. */
function firstAttempts(count: number): [job: string, actions: Action[]][] {
  const list: [string, Action[]][] = [];
  const property = anyAttempts(JOB_IDS, hobbinModel(), ACTIONS, (job, actions) => {
    list.push([job, [{ do: 'start' }, ...actions]]);
  });
  fc.assert(property, { numRuns: count, seed: CHOICE });
  return list;
}

describe('the same log, readings and volts in the browser as here', () => {
  test.each(JOB_IDS)('%s, its own way', async (id) => {
    const way: [string, Action[]] = [id, theJob(id).path];
    const [log] = await there([way]);
    expect(log).toEqual(here(way));
    expect(log.steps.filter((step) => !/^[0-9a-f]{64} /.test(step))).toEqual([]);
  });

  test(`${ATTEMPTS} attempts of ${ACTIONS} random actions`, { timeout: ATTEMPTS * 10_000 }, async () => {
    const begun = firstAttempts(ATTEMPTS);
    const logs = new Set<string>();
    let readings = 0;
    for (let i = 0; i < begun.length; i += AT_ONCE) {
      const some = begun.slice(i, i + AT_ONCE);
      const theirs = await there(some);
      for (const [k, one] of some.entries()) {
        expect(theirs[k], `attempt ${i + k}, ${one[0]}`).toEqual(here(one));
        logs.add(theirs[k].log);
        readings += theirs[k].steps.filter((step) => /^[0-9a-f]{64} [^-]/.test(step)).length;
      }
    }
    // Not the same attempt again and again, and not one where nothing is ever measured.
    expect(logs.size).toBe(ATTEMPTS);
    expect(readings).toBeGreaterThan(ATTEMPTS / 2);
  });
});

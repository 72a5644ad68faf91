/** What a student's browser fetches until a job can be worked on, as it is fetched, gzipped. */
import type { Page } from 'playwright-core';
import type { Site } from '../browser/support.ts';
import { type Figure, figure } from './figure.ts';
import { BARE_PEER, bareCode, gzipped } from './page.ts';

/** The book and the jobs are a file of their own. */
const BOOK = /\/book-[^/]*\.js$/;
/** What the opened job still asks for has come by then, ms. */
const PATIENCE_MS = 2000;
const JOB = /Cranks slowly/;

/** From the empty browser over the board and the work order to the drawn place. */
export async function loadFigures(page: Page, site: Site): Promise<Figure[]> {
  const fetched = new Map<string, Promise<Buffer>>();
  page.on('response', (response) => {
    // What the page makes for itself does not come over the line.
    if (!response.url().startsWith('blob:')) fetched.set(response.url(), response.body());
  });
  await page.goto(site.url);
  await takeJob(page);
  await page.waitForTimeout(PATIENCE_MS);
  page.removeAllListeners('response');
  const sizes = await Promise.all([...fetched].map(async ([url, body]) => ({ url, bytes: gzipped(await body) })));
  const sum = (wanted: (url: string) => boolean): number =>
    sizes.filter(({ url }) => wanted(url)).reduce((bytes, one) => bytes + one.bytes, 0);
  const peer = { name: BARE_PEER, value: await bareCode() };
  return [
    figure(
      'page.code',
      sum((url) => url.endsWith('.js') && !BOOK.test(url)),
      'bytes gzip',
      1,
      peer,
    ),
    figure(
      'page.load',
      sum(() => true),
      'bytes gzip, with book, fonts and drawings',
      1,
      peer,
    ),
  ];
}

async function takeJob(page: Page): Promise<void> {
  await page.getByRole('link', { name: JOB }).click();
  await page.getByRole('button', { name: /^Take the job/ }).click();
  await page.locator('.stage-host canvas').waitFor();
}

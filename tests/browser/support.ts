/** A built page on a free port and a browser on it that talks to nobody else. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { preview } from 'vite';
import { browserPath } from './ensure-browser.ts';

const project = fileURLToPath(new URL('../..', import.meta.url));

export interface Site {
  url: string;
  browser: Browser;
  close(): Promise<void>;
}

export async function openSite(): Promise<Site> {
  // Another build can be tried beside the one in `dist`.
  const outDir = process.env.OHMYARD_SITE ?? `${project}dist`;
  if (!existsSync(`${outDir}/index.html`)) throw new Error(`No ${outDir}: run \`npx vite build\` first.`);
  const server = await preview({
    root: `${project}src`,
    configFile: `${project}vite.config.ts`,
    build: { outDir },
    preview: { port: 0, strictPort: false },
  });
  const url = server.resolvedUrls?.local[0];
  if (url === undefined) throw new Error('The preview server has no address.');
  const browser = await chromium.launch({
    executablePath: await browserPath(),
    args: ['--no-sandbox', '--enable-unsafe-swiftshader', '--autoplay-policy=no-user-gesture-required'],
  });
  return {
    url,
    browser,
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

export interface Visit {
  page: Page;
  /** Errors of the page and of its console, for a test to find none. */
  errors: string[];
  close(): Promise<void>;
}

/** A visitor with a browser of their own. Whatever is not on this machine is refused and counts as an error. */
export async function visit(site: Site, options: BrowserContextOptions = {}): Promise<Visit> {
  const context = await site.browser.newContext({ viewport: { width: 1366, height: 768 }, ...options });
  const errors: string[] = [];
  await context.route('**/*', (route) => {
    const { hostname, protocol } = new URL(route.request().url());
    const isLocal = ['localhost', '127.0.0.1', '[::1]'].includes(hostname) || ['data:', 'blob:'].includes(protocol);
    if (isLocal) return route.continue();
    errors.push(`asked for ${route.request().url()}`);
    return route.abort();
  });
  const page = await context.newPage();
  watch(page, errors);
  await page.goto(site.url);
  return { page, errors, close: () => context.close() };
}

export function watch(page: Page, errors: string[]): void {
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
}

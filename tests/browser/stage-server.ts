/** Serves the page of the stage and opens it in the browser, for the tests of the stage. */
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import { drawings } from '../../assets/build/vite-plugin.ts';
import { browserPath } from './ensure-browser.ts';

const ROOT = fileURLToPath(new URL('./stage-page', import.meta.url));

export interface StageServer {
  open(
    size: { width: number; height: number },
    options?: { density?: number; query?: string; touch?: boolean },
  ): Promise<Page>;
  close(): Promise<void>;
}

export async function serveStage(): Promise<StageServer> {
  const server: ViteDevServer = await createServer({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    server: { port: 0, hmr: false },
    cacheDir: fileURLToPath(new URL('../../node_modules/.vite-stage', import.meta.url)),
    optimizeDeps: { include: ['phaser'] },
    plugins: [drawings()],
  });
  await server.listen();
  const url = server.resolvedUrls?.local[0] ?? '';
  const browser: Browser = await chromium.launch({
    executablePath: await browserPath(),
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  return {
    async open(size, { density = 1, query = 'bare', touch = false } = {}) {
      const page = await browser.newPage({ viewport: size, deviceScaleFactor: density, hasTouch: touch });
      await page.goto(`${url}?${query}`);
      await page.waitForFunction(() => 'page' in window && document.querySelector('canvas') !== null);
      return page;
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type StageServer, serveStage } from './stage-server.ts';

let server: StageServer;
beforeAll(async () => {
  server = await serveStage();
});
afterAll(async () => {
  await server.close();
});

const SIZE = { width: 1366, height: 768 };
/** Where a unit of a fitted 1600 × 900 drawing lies on a stage of that size. */
const onScreen = (x: number, y: number): [number, number] => [18 + x * 0.8311, 10 + y * 0.8311];

async function show(page: Page, change: object): Promise<void> {
  await page.evaluate((c) => window.page.show(c), change);
  await page.waitForTimeout(500);
}
const told = async (page: Page): Promise<string[]> =>
  (await page.evaluate(() => window.page.log.splice(0))).filter((line) => !line.startsWith('hover'));

describe('the stage in a browser', () => {
  it.each(['bare&renderer=webgl', 'bare&renderer=canvas'])(
    'shows every place under the policy without a complaint (%s)',
    async (query) => {
      const page = await server.open(SIZE, { query });
      const complaints: string[] = [];
      page.on('pageerror', (error) => complaints.push(error.message));
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      for (const place of await page.evaluate(() => window.page.places)) {
        await page.evaluate((p) => window.page.show({ place: p, opened: window.page.covers }), place);
        await page.waitForTimeout(250);
      }
      expect(complaints).toEqual([]);
      expect(await page.evaluate(() => document.querySelector('canvas')?.getAttribute('aria-hidden'))).toBe('true');
      await page.close();
    },
  );

  it('tells points, handles and places that are touched', async () => {
    const page = await server.open(SIZE);
    await show(page, { place: 'YARD' });
    await page.mouse.click(...onScreen(1200, 470));
    expect(await told(page)).toEqual(['zone "ENGL"']);
    await show(page, { place: 'CDASH', controls: { key: 'run' } });
    await page.mouse.click(...onScreen(90, 578));
    await page.mouse.click(...onScreen(1100, 690));
    expect(await told(page)).toEqual(['point "J2.A"', 'control "lights" "side"']);
    await page.mouse.move(...onScreen(1000, 640));
    await page.mouse.down();
    await page.waitForTimeout(100);
    expect(await told(page)).toEqual(['control "key" "start"']);
    await page.mouse.up();
    expect(await told(page)).toEqual(['control "key" "run"']);
    await page.close();
  });

  it('picks with a finger, and a dragging finger pans instead', async () => {
    const page = await server.open(SIZE, { touch: true });
    await show(page, { place: 'BATT', opened: ['AC4'] });
    const [x, y] = onScreen(598, 410);
    await page.touchscreen.tap(x + 12, y);
    expect(await told(page)).toEqual(['point "G1.+"']);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y + 20, { steps: 4 });
    await page.mouse.up();
    expect(await told(page)).toEqual([]);
    await page.close();
  });

  it('draws a handle where it stands, whatever came in between', async () => {
    const page = await server.open(SIZE);
    const knob = { x: 18 + 660 * 0.8311, y: 10 + 130 * 0.8311, width: 100, height: 110 };
    const look = async (): Promise<string> => {
      await page.waitForTimeout(900);
      return (await page.screenshot({ clip: knob })).toString('base64');
    };
    const at = { place: 'BATT', opened: ['AC4'] };
    await show(page, { ...at, controls: { iso: '0' } });
    const off = await look();
    await show(page, { controls: { iso: '1' } });
    expect(await look()).not.toBe(off);
    // There and back before a frame is drawn, and from another place with the old state told first.
    await page.evaluate(() => {
      window.page.show({ controls: { iso: '0' } });
      window.page.show({ controls: { iso: '1' } });
      window.page.show({ controls: { iso: '0' } });
    });
    expect(await look()).toBe(off);
    await show(page, { place: 'YARD' });
    await page.evaluate((back) => {
      window.page.show({ ...back, controls: { iso: '1' } });
      window.page.show({ controls: { iso: '0' } });
    }, at);
    expect(await look()).toBe(off);
    await page.close();
  });

  it('takes a double click on a handle for one', async () => {
    const page = await server.open(SIZE);
    await show(page, { place: 'BATT', opened: ['AC4'], controls: { iso: '1' } });
    await page.mouse.dblclick(...onScreen(716, 190));
    expect(await told(page)).toEqual(['control "iso" "0"']);
    await page.close();
  });

  it('draws a frame only when something changed', async () => {
    const page = await server.open(SIZE);
    await show(page, { place: 'BDASH', opened: ['AC2', 'AC11'] });
    await page.waitForTimeout(600);
    const frames = () =>
      page.evaluate(async () => {
        let count = 0;
        const original = window.requestAnimationFrame;
        window.requestAnimationFrame = (callback) => {
          count += 1;
          return original(callback);
        };
        await new Promise((resolve) => setTimeout(resolve, 500));
        window.requestAnimationFrame = original;
        return count;
      });
    // The last pictures may still be coming in on a slow machine.
    for (let i = 0; i < 8 && (await frames()) > 0; i += 1);
    expect(await frames()).toBe(0);
    await page.evaluate(() => window.page.show({ cranking: true }));
    expect(await frames()).toBeGreaterThan(2);
    await show(page, { cranking: true, reducedMotion: true });
    expect(await frames()).toBe(0);
    await page.close();
  });

  it('leaves no listener behind over ten restarts', async () => {
    const page = await server.open(SIZE);
    await show(page, { place: 'BATT' });
    const counts = await page.evaluate(async () => {
      let count = 0;
      const { addEventListener, removeEventListener } = EventTarget.prototype;
      // Of the page, not of what is thrown away with the stage: images, the canvas, the network.
      const isLasting = (target: unknown): boolean => !target || target === window || target === document;
      const seen = new Set<unknown>();
      EventTarget.prototype.addEventListener = function (...args: Parameters<typeof addEventListener>) {
        if (isLasting(this) && !seen.has(args[1])) {
          seen.add(args[1]);
          count += 1;
        }
        addEventListener.apply(this ?? window, args);
      };
      EventTarget.prototype.removeEventListener = function (...args: Parameters<typeof removeEventListener>) {
        if (isLasting(this) && seen.delete(args[1])) count -= 1;
        removeEventListener.apply(this ?? window, args);
      };
      const counts: number[] = [];
      window.page.stage.destroy();
      count = 0;
      for (let i = 0; i < 10; i += 1) {
        window.page.stage = window.page.open();
        window.page.stage.show(window.page.view);
        await new Promise((resolve) => setTimeout(resolve, 250));
        window.page.stage.destroy();
        await new Promise((resolve) => setTimeout(resolve, 50));
        counts.push(count);
      }
      return [...counts, document.querySelectorAll('canvas').length];
    });
    expect(counts).toEqual(Array.from({ length: 11 }, () => 0));
    await page.close();
  });

  it('keeps a frame of the heaviest place short', async () => {
    const page = await server.open(SIZE);
    await show(page, { place: 'BDASH', opened: ['AC2', 'AC11'], leads: { red: 'X4.3.a', black: 'GND4.L' } });
    const [x, y] = onScreen(800, 450);
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, -300);
    await page.waitForTimeout(600);
    const worst = await page.evaluate(async () => {
      const times: number[] = [];
      const original = window.requestAnimationFrame;
      window.requestAnimationFrame = (callback) =>
        original((now) => {
          const start = performance.now();
          callback(now);
          times.push(performance.now() - start);
        });
      window.page.show({ cranking: true });
      await new Promise((resolve) => setTimeout(resolve, 1500));
      window.page.show({ cranking: false });
      window.requestAnimationFrame = original;
      times.sort((a, b) => a - b);
      return times[Math.floor(times.length / 2)];
    });
    console.log(`BDASH, a frame while it shakes: ${worst.toFixed(2)} ms`);
    expect(worst).toBeLessThan(16);
    await page.close();
  });
});

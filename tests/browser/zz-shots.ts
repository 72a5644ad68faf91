import { openSite, visit } from './support.ts';

const site = await openSite();
for (const [name, file] of process.argv.slice(2).map((x) => x.split('='))) {
  const { page, errors, close } = await visit(site);
  const t0 = Date.now();
  await page.locator('.file input').setInputFiles(file);
  await page.getByRole('button', { name: 'Look at this attempt' }).click();
  await page.waitForTimeout(1500);
  await page.screenshot({ path: `/tmp/debrief-shots/${name}-working.png` });
  await page.locator('.verdict').waitFor({ timeout: 200000 });
  console.log(name, 'graded', Date.now() - t0);
  await page.locator('.legend-sound').waitFor({ timeout: 200000 });
  console.log(name, 'sound', Date.now() - t0);
  for (const [w, h] of [
    [1366, 768],
    [1920, 1080],
    [820, 1180],
    [1024, 600],
    [390, 800],
  ]) {
    await page.setViewportSize({ width: w, height: h });
    await page.waitForTimeout(300);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    const tall = await page.evaluate(() => document.querySelector('main')?.scrollHeight ?? 0);
    console.log(w, 'overflow', over, tall);
    await page.setViewportSize({ width: w, height: Math.min(tall + 100, 5000) });
    await page.waitForTimeout(200);
    const t = Math.min(tall + 100, 5000);
    for (let y = 0, i = 0; y < t; y += 1400, i++)
      await page.screenshot({
        path: `/tmp/debrief-shots/${name}-${w}-${i}.png`,
        clip: { x: 0, y, width: w, height: Math.min(1400, t - y) },
      });
  }
  await page.setViewportSize({ width: 1366, height: 768 });
  for (const format of ['A4', 'Letter']) {
    const pdf = await page.pdf({ path: `/tmp/debrief-shots/${name}-${format}.pdf`, format });
    console.log(format, pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length);
  }
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 703, height: 2000 });
  await page.waitForTimeout(300);
  await page.screenshot({ path: `/tmp/debrief-shots/${name}-print.png`, fullPage: true });
  await page.emulateMedia({ media: 'screen', colorScheme: 'dark' });
  await page.waitForTimeout(300);
  await page.setViewportSize({ width: 1366, height: 2600 });
  await page.waitForTimeout(300);
  await page.screenshot({ path: `/tmp/debrief-shots/${name}-dark.png` });
  console.log(errors);
  await close();
}
await site.close();

/** Rules of accessibility, tried on what is on screen. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  id: string;
  nodes: { html: string; any: { message: string }[] }[];
}

/** Violations as short lines; none is what a test wants. */
export async function violations(page: Page): Promise<string[]> {
  // Through the debugger's door: the page itself runs no script but its own.
  await page.evaluate(source);
  const found = await page.evaluate(async () => {
    const axe = (globalThis as unknown as { axe: { run(options: object): Promise<{ violations: Violation[] }> } }).axe;
    const result = await axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });
    return result.violations.map(({ id, nodes }) => ({
      id,
      nodes: nodes.map(({ html, any }) => ({ html, any: any.map(({ message }) => ({ message })) })),
    }));
  });
  return found.flatMap(({ id, nodes }) =>
    nodes.slice(0, 4).map((node) => `${id}: ${node.html.slice(0, 160)} ${node.any[0]?.message ?? ''}`),
  );
}

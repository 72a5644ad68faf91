/** How much code the page has, beside a page that only starts the same three libraries. */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { type Figure, figure } from './figure.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const BARE_PAGE = '<!doctype html><html lang="en"><body><script type="module" src="./main.js"></script></body></html>';
/** Each library is started, so that what it needs for that is in. */
const BARE_CODE = `
import Phaser from 'phaser';
import { Howl } from 'howler';
import { createActor, createMachine } from 'xstate';
const actor = createActor(createMachine({ initial: 'a', states: { a: { on: { GO: 'b' } }, b: {} } })).start();
new Phaser.Game({ type: Phaser.AUTO, scene: { create() { actor.send({ type: 'GO' }); } } });
new Howl({ src: ['click.webm'] }).play();
`;

export const BARE_PEER = 'a bare page that starts Phaser, XState and Howler, same bundler';

let bare: Promise<number> | null = null;

/** Gzipped bytes of all scripts of the bare page. */
export function bareCode(): Promise<number> {
  bare ??= measureBare();
  return bare;
}

async function measureBare(): Promise<number> {
  const folder = mkdtempSync(join(ROOT, 'node_modules', '.bench-'));
  try {
    return codeOf(await buildBare(folder));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Of the files as they were built, without a browser. */
export async function pageFigures(): Promise<Figure[]> {
  const page = join(process.env.OHMYARD_SITE ?? join(ROOT, 'dist'), 'index.html');
  if (!existsSync(page)) return [];
  const peer = { name: BARE_PEER, value: await bareCode() };
  return [
    figure('page.code.start', codeToStart(page), 'bytes gzip, named by the page itself, with the book', 1, peer),
    figure('page.code.all', codeOf(page), 'bytes gzip, with book, debrief, manual and workers', 1, peer),
  ];
}

async function buildBare(folder: string): Promise<string> {
  mkdirSync(join(folder, 'src'));
  writeFileSync(join(folder, 'src', 'index.html'), BARE_PAGE);
  writeFileSync(join(folder, 'src', 'main.js'), BARE_CODE);
  await build({
    root: join(folder, 'src'),
    configFile: false,
    base: './',
    logLevel: 'error',
    build: { outDir: join(folder, 'dist'), target: 'es2022', chunkSizeWarningLimit: 2000 },
  });
  return join(folder, 'dist', 'index.html');
}

/** Gzipped bytes of the scripts that the page itself names: what is loaded before anything shows. */
function codeToStart(page: string): number {
  const html = readFileSync(page, 'utf8');
  return bytesOf(
    page,
    scriptsOf(page).filter((name) => html.includes(name)),
  );
}

/** Gzipped bytes of every script that the page leads to, by import or by name: workers and parts loaded later too. */
function codeOf(page: string): number {
  const assets = join(dirname(page), 'assets');
  const scripts = scriptsOf(page);
  const reached = new Set<string>();
  const waiting = [readFileSync(page, 'utf8')];
  for (let text = waiting.pop(); text !== undefined; text = waiting.pop()) {
    for (const name of scripts) {
      if (reached.has(name) || !text.includes(name)) continue;
      reached.add(name);
      waiting.push(readFileSync(join(assets, name), 'utf8'));
    }
  }
  return bytesOf(page, [...reached]);
}

function scriptsOf(page: string): string[] {
  return readdirSync(join(dirname(page), 'assets')).filter((name) => name.endsWith('.js'));
}

function bytesOf(page: string, names: readonly string[]): number {
  return names.reduce((sum, name) => sum + gzipped(readFileSync(join(dirname(page), 'assets', name))), 0);
}

export const gzipped = (content: Buffer): number => gzipSync(content).length;

/**
 * Builds the drawings: `npm run drawings`. Each SVG of assets/drawings becomes a file of layers and points in
 * assets/drawings/built, beside the label face as outlines. The drawn points are compared with the machine's book.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Drawing } from '../../src/game/drawing.ts';
import { assemble } from './assemble.ts';
import { compareWithBook } from './check.ts';
import { readLettering } from './font.ts';
import { readRules } from './rules.ts';

const HERE = fileURLToPath(new URL('.', import.meta.url));
export const SOURCES = join(HERE, '../drawings');
const BUILT = join(SOURCES, 'built');
/** The machine that these drawings show. */
export const BOOK = join(HERE, '../../scenarios/machines/hobbin-45');

export function buildDrawings(): Drawing[] {
  const lettering = readLettering();
  const rules = readRules(join(SOURCES, 'rules.json'));
  const colours = JSON.parse(readFileSync(join(SOURCES, 'tokens.json'), 'utf8')) as { light: Record<string, string> };
  const palette = { tokens: new Set(Object.keys(colours.light)), lettering };
  return svgNames().map((name) => assemble(name, readFileSync(join(SOURCES, `${name}.svg`), 'utf8'), rules, palette));
}

const svgNames = (): string[] =>
  readdirSync(SOURCES)
    .filter((file) => file.endsWith('.svg'))
    .map((file) => basename(file, '.svg'))
    .sort();

export function writeDrawings(): Drawing[] {
  const drawings = buildDrawings();
  mkdirSync(BUILT, { recursive: true });
  for (const drawing of drawings) put(`${drawing.id}.json`, drawing);
  put('lettering.json', readLettering());
  return drawings;
}

/** Leaves an unchanged file alone, so that a running page does not reload for nothing. */
function put(file: string, value: unknown): void {
  const path = join(BUILT, file);
  const text = JSON.stringify(value);
  if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeFileSync(path, text);
}

/** True when a source or this build step is younger than what was built. */
export function isStale(): boolean {
  const age = (path: string): number => statSync(path).mtimeMs;
  const built = [...svgNames(), 'lettering'].map((name) => join(BUILT, `${name}.json`));
  if (!built.every((path) => existsSync(path))) return true;
  const inputs = [SOURCES, HERE].flatMap((folder) =>
    readdirSync(folder)
      .filter((file) => /\.(svg|json|ts)$/.test(file))
      .map((file) => age(join(folder, file))),
  );
  return Math.max(...inputs) > Math.max(...built.map(age), stamp());
}

const STAMP = join(BUILT, '.stamp');
const stamp = (): number => (existsSync(STAMP) ? statSync(STAMP).mtimeMs : 0);
export function writeWhenStale(): void {
  if (!isStale()) return;
  writeDrawings();
  writeFileSync(STAMP, '');
}

function main(): void {
  const drawings = writeDrawings();
  writeFileSync(STAMP, '');
  for (const d of drawings) {
    const size = statSync(join(BUILT, `${d.id}.json`)).size;
    console.log(
      `${d.id.padEnd(11)} ${String(Math.round(size / 1024)).padStart(4)} KB  ${d.layers.length} layers in ${Math.max(...d.layers.map((l) => l.tier)) + 1} tiers, ` +
        `${d.points.length} points, ${d.controls.length} controls, ${d.areas.length} areas`,
    );
  }
  const { unreached } = readRules(join(SOURCES, 'rules.json'));
  const { book, drawn, unknown, missing } = compareWithBook(drawings, BOOK, unreached);
  const list = (names: string[]): string => (names.length === 0 ? 'none' : names.join(', '));
  console.log(`book: ${book} points; drawn: ${drawn}`);
  console.log(`unknown to the book: ${list(unknown)}`);
  console.log(`missing from the drawings: ${list(missing)}`);
  if (unknown.length + missing.length > 0) process.exitCode = 1;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();

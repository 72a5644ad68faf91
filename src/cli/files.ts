/** Reads JSON files from disk for the command line and the tests. Bad JSON is a problem with its line and column. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from '../scenario/problem.ts';
import { type BookResult, readBook } from '../scenario/read-book.ts';
import { jsonErrorOffset } from './json-place.ts';

export type JsonFile = { ok: true; value: unknown } | { ok: false; problem: Problem };

/** Line and column, both from 1, of a place in a text. */
function lineAndColumn(text: string, offset: number): string {
  const before = text.slice(0, offset).split('\n');
  return `line ${before.length}, column ${(before.at(-1) ?? '').length + 1}`;
}

export function parseJson(file: string, text: string): JsonFile {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const path = lineAndColumn(text, jsonErrorOffset(text));
    return { ok: false, problem: { file, path, code: 'bad-json', found: message, expected: 'JSON' } };
  }
}

export function loadJson(file: string): JsonFile {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    const found = error instanceof Error ? error.message : String(error);
    return { ok: false, problem: { file, path: '', code: 'unreadable', found, expected: 'a file that can be read' } };
  }
  return parseJson(file, text);
}

/** All JSON files that stand directly in a folder, by name. */
export function loadFolder(dir: string): { values: Record<string, unknown>; problems: Problem[] } {
  const values: Record<string, unknown> = {};
  const problems: Problem[] = [];
  for (const name of readdirSync(dir).sort()) {
    if (!name.endsWith('.json')) continue;
    const read = loadJson(join(dir, name));
    if (read.ok) values[join(dir, name)] = read.value;
    else problems.push(read.problem);
  }
  return { values, problems };
}

export function loadBookFiles(dir: string): BookResult {
  const { values, problems } = loadFolder(dir);
  return problems.length > 0 ? { ok: false, problems } : readBook(values);
}

/** The source files as text, and what each imports. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Files below a folder of the project with these endings, as paths from the project's root. */
export function filesIn(folder: string, ending: RegExp): string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true })
    .flatMap((entry) => {
      if (entry.name === 'node_modules') return [];
      const path = join(folder, entry.name);
      return entry.isDirectory() ? filesIn(path, ending) : ending.test(entry.name) ? [path] : [];
    })
    .sort();
}

export const textOf = (path: string): string => readFileSync(join(ROOT, path), 'utf8');

/** `from '…'`, `import '…'`, `import('…')` and workers' `new URL('…', import.meta.url)`; types included. */
const IMPORT =
  /(?:\bfrom\s*|\bimport\s*\(\s*|^\s*import\s+)['"]([^'"]+)['"]|new URL\(\s*['"]([^'"]+)['"]\s*,\s*import\.meta\.url/gm;

export function importsIn(text: string): string[] {
  return [...text.matchAll(IMPORT)].map((match) => match[1] ?? match[2]);
}

/** Own files that a file imports, as paths from the project's root. */
export function ownImports(path: string): string[] {
  return importsIn(textOf(path))
    .filter((name) => name.startsWith('.'))
    .map((name) => normalize(join(dirname(path), name.replace(/\?.*$/, ''))))
    .filter((name) => !relative('src', name).startsWith('..') && /\.tsx?$/.test(name));
}

/** Code without its comments, so that words in prose do not count. Strings stay. */
export const withoutComments = (text: string): string =>
  text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[^:'"`\\])\/\/.*$/gm, '$1');

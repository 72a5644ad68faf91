/** Reads a machine's book from its files: first each file by its schema, then everything that must agree between them. */
import type { Book } from '../machine/book.ts';
import { checkBook } from './check-book.ts';
import { problemsOf } from './issue.ts';
import { Origins } from './origins.ts';
import { type Problem, shown } from './problem.ts';
import { BOOK_SCHEMAS, type BookFileKind } from './schema-index.ts';

export type BookResult = { ok: true; book: Book } | { ok: false; problems: Problem[] };

/** Kinds of file that stand once in a book; all others may be split into as many files as is handy. */
const ONCE: readonly BookFileKind[] = ['machine', 'shop'];

/** Which kind of file its `$schema` says it is; null where it is none of a book's. */
export function kindOf(value: unknown): BookFileKind | null {
  if (typeof value !== 'object' || value === null || !('$schema' in value)) return null;
  if (typeof value.$schema !== 'string') return null;
  const name = /(?:^|\/)([\w-]+)\.schema\.json$/.exec(value.$schema)?.[1];
  return name !== undefined && Object.hasOwn(BOOK_SCHEMAS, name) ? (name as BookFileKind) : null;
}

/** One file, by the schema that it names. */
export function readBookFile(file: string, value: unknown): { kind: BookFileKind; data: object } | Problem[] {
  const kind = kindOf(value);
  if (kind === null) {
    const found = typeof value === 'object' && value !== null && '$schema' in value ? value.$schema : value;
    const expected = `the path of one of ${Object.keys(BOOK_SCHEMAS).join(', ')} with .schema.json behind it`;
    return [{ file, path: '$schema', code: 'unknown-schema', found: shown(found), expected }];
  }
  try {
    const result = BOOK_SCHEMAS[kind].safeParse(value);
    return result.success ? { kind, data: result.data } : problemsOf(file, value, result.error.issues);
  } catch (error) {
    // Guards in guards without end: the stack is the bound.
    if (!(error instanceof RangeError)) throw error;
    return [{ file, path: '', code: 'too-deep', found: error.message, expected: 'guards nested a few deep' }];
  }
}

/** The files' contents by name, any number of them, as JSON gave them. */
export function readBook(files: Record<string, unknown>): BookResult {
  const problems: Problem[] = [];
  const merged = new Map<string, unknown>();
  const origins = new Origins();
  const seen = new Map<BookFileKind, string>();
  for (const file of Object.keys(files).sort()) {
    const read = readBookFile(file, files[file]);
    if (Array.isArray(read)) {
      problems.push(...read);
      continue;
    }
    const earlier = seen.get(read.kind);
    if (earlier !== undefined && ONCE.includes(read.kind)) {
      const expected = `one ${read.kind} file in a book; ${earlier} is one`;
      problems.push({ file, path: '', code: 'second-file', found: file, expected });
      continue;
    }
    seen.set(read.kind, file);
    merge(file, read.data, merged, origins);
  }
  if (problems.length > 0) return { ok: false, problems };
  for (const kind of Object.keys(BOOK_SCHEMAS) as BookFileKind[]) {
    if (!seen.has(kind)) {
      const expected = `a file with ${kind}.schema.json as its $schema`;
      problems.push({ file: '', path: '', code: 'missing-file', found: 'nothing', expected });
    }
  }
  if (problems.length > 0) return { ok: false, problems };
  // Each schema is proved at compile time to hold its share of a Book, and all of them are there.
  const book = Object.fromEntries(merged) as unknown as Book;
  const disagreements = checkBook(book, origins);
  return disagreements.length === 0 ? { ok: true, book } : { ok: false, problems: disagreements };
}

function merge(file: string, data: object, into: Map<string, unknown>, origins: Origins): void {
  for (const [key, value] of Object.entries(data)) {
    if (key === '$schema') continue;
    origins.add(file, key, value);
    const known = into.get(key);
    if (Array.isArray(value) && Array.isArray(known)) known.push(...value);
    else into.set(key, Array.isArray(value) ? [...value] : value);
  }
}

import { expect, test } from 'vitest';
import { loadBookFiles } from '../../src/cli/files.ts';
import type { Book } from '../../src/machine/index.ts';
import { contentOf } from '../../src/parts/index.ts';
import { BOOK_FOLDER } from './book-fixture.ts';

function readHobbin(): Book {
  const result = loadBookFiles(BOOK_FOLDER);
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 2));
  return result.book;
}

test('the book of the Hobbin 45 reads without a problem, whole', () => {
  const book = readHobbin();
  expect(book.id).toBe('hobbin-45');
  expect(book.parts).toHaveLength(129);
  expect(book.wires).toHaveLength(376);
  expect(new Set(book.wires.map((w) => w.number)).size).toBe(151);
  expect(book.connectors).toHaveLength(28);
  expect(book.connectors.flatMap((c) => c.pins)).toHaveLength(224);
  expect(book.splices).toHaveLength(50);
  expect(book.grounds).toHaveLength(7);
  expect(book.parts.filter((p) => p.kind === 'fuse')).toHaveLength(38);
  expect(book.parts.filter((p) => p.kind === 'relay')).toHaveLength(12);
});

/**
 * Its table has 269 rows. Without receivers the dead bus would read OL to ground, where the book reads 10 k (fault T66);
 * the 5 V reference at its limit is a source of its own.
 */
const BESIDE_THE_TABLE = ['canhin', 'canlin', 'v5limit'];

test('its parts have the inner elements of the book, inputs for CAN lines and a limited reference', () => {
  const elements = readHobbin().parts.flatMap((p) => contentOf(p).elements);
  const beside = elements.filter((element) => BESIDE_THE_TABLE.includes(element.id));
  expect(beside).toHaveLength(7);
  expect(elements.length - beside.length).toBe(269);
});

test('every file of the book names its schema by a path that leads to it', async () => {
  const { existsSync, readdirSync, readFileSync } = await import('node:fs');
  const { join } = await import('node:path');
  for (const name of readdirSync(BOOK_FOLDER).filter((n) => n.endsWith('.json'))) {
    const { $schema } = JSON.parse(readFileSync(join(BOOK_FOLDER, name), 'utf8')) as { $schema: string };
    expect(existsSync(join(BOOK_FOLDER, $schema)), `${name}: ${$schema}`).toBe(true);
  }
});

/** The Hobbin 45's book and sheets, read as the game reads them. */
import fs from 'node:fs';
import * as z from 'zod/mini';
import { readBook } from '../../src/scenario/read-book.ts';
import { type SheetSpec, sheetSchema } from '../../src/scenario/schema-sheet.ts';

const MACHINE = 'scenarios/machines/hobbin-45';
const readJson = (file: string): unknown => JSON.parse(fs.readFileSync(file, 'utf8'));
const jsonIn = (folder: string): string[] => fs.readdirSync(folder).filter((name) => name.endsWith('.json'));

export function readHobbin() {
  const result = readBook(Object.fromEntries(jsonIn(MACHINE).map((name) => [name, readJson(`${MACHINE}/${name}`)])));
  if (!result.ok) throw new Error(JSON.stringify(result.problems.slice(0, 5)));
  return result.book;
}

export function readSheets(): SheetSpec[] {
  const folder = `${MACHINE}/sheets`;
  return jsonIn(folder).map((name) => z.parse(sheetSchema, readJson(`${folder}/${name}`)));
}

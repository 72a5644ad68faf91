/** The Hobbin 45 as its files stand, read by the reader that the game uses. Read once for a test file. */
import { fileURLToPath } from 'node:url';
import { loadBookFiles } from '../../src/cli/files.ts';
import { type Book, buildModel, type Model } from '../../src/machine/index.ts';

let book: Book | null = null;
let model: Model | null = null;

export function hobbinBook(): Book {
  if (book !== null) return book;
  const result = loadBookFiles(fileURLToPath(new URL('../../scenarios/machines/hobbin-45', import.meta.url)));
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.file} ${p.path}: ${p.code}`).join('\n'));
  book = result.book;
  return book;
}

/** The model is frozen: all tests of a file share it. */
export function hobbinModel(): Model {
  model ??= buildModel(hobbinBook());
  return model;
}

/** Tables of numbers beside the tests: tab-separated, first row the names. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export type Row = Record<string, string>;

export function readTsv(name: string, from: string): Row[] {
  const text = readFileSync(fileURLToPath(new URL(name, from)), 'utf8');
  const [head, ...lines] = text
    .replace(/\n$/, '')
    .split('\n')
    .map((line) => line.split('\t'));
  return lines.map((cells) => Object.fromEntries(head.map((column, i) => [column, cells[i] ?? ''])));
}

/** Compares the drawn points with the book's tables: every name known, every point that takes a probe drawn somewhere. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Drawing } from '../../src/game/drawing.ts';

type Row = Record<string, string>;

function readTable(folder: string, name: string): Row[] {
  const [head, ...lines] = readFileSync(join(folder, `${name}.tsv`), 'utf8')
    .trimEnd()
    .split('\n');
  const columns = head.split('\t');
  return lines.map((line) => Object.fromEntries(line.split('\t').map((cell, i) => [columns[i] ?? '', cell])));
}

/** Inside a part, where no probe reaches. */
const INSIDE = /^(M1\.MF|A\d+\.V5|E16\.X)$/;

export function bookPoints(folder: string): Map<string, string> {
  const points = new Map<string, string>();
  for (const part of readTable(folder, 'parts')) {
    for (const terminal of (part.terminals ?? '').split(' ').filter((t) => t !== '')) {
      const point = `${part.id}.${terminal}`;
      if (!INSIDE.test(point)) points.set(point, part.zone ?? '');
    }
  }
  const connectors = new Map(readTable(folder, 'connectors').map((c) => [c.id, c]));
  for (const pin of readTable(folder, 'pins')) {
    const connector = connectors.get(pin.connector ?? '');
    const sides = connector?.kind === 'inline' ? ['a', 'b'] : ['a'];
    for (const side of sides) points.set(`${pin.connector}.${pin.pin}.${side}`, connector?.zone ?? '');
  }
  return points;
}

export function compareWithBook(
  drawings: Drawing[],
  folder: string,
): { lines: string[]; unknown: string[]; missing: string[] } {
  const book = bookPoints(folder);
  const lines: string[] = [];
  const drawn = new Set<string>();
  const unknown: string[] = [];
  for (const drawing of drawings) {
    for (const { point, also } of drawing.points) {
      for (const name of [point, ...(also ? [also] : [])]) {
        drawn.add(name);
        if (!book.has(name)) unknown.push(`${name} in ${drawing.id}`);
      }
    }
  }
  const missing = [...book].filter(([point]) => !drawn.has(point)).map(([point, zone]) => `${point} (${zone})`);
  lines.push(`book: ${book.size} points; drawn: ${drawn.size}`);
  lines.push(`unknown to the book: ${unknown.length === 0 ? 'none' : unknown.join(', ')}`);
  lines.push(`missing from the drawings: ${missing.length === 0 ? 'none' : missing.join(', ')}`);
  return { lines, unknown, missing };
}

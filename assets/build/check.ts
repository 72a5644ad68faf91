/** Compares the drawn points with the book: every name known, every point that takes a probe drawn somewhere. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Drawing } from '../../src/game/drawing.ts';

interface BookFile {
  parts?: { id: string; zone: string; terminals?: string[] }[];
  connectors?: { id: string; zone: string; kind: string; pins: { pin: string }[] }[];
}

/** Every point of a machine's folder with the place where it is. */
export function bookPoints(folder: string): Map<string, string> {
  const points = new Map<string, string>();
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.json'))) {
    const { parts = [], connectors = [] } = JSON.parse(readFileSync(join(folder, file), 'utf8')) as BookFile;
    for (const { id, zone, terminals = [] } of parts) for (const t of terminals) points.set(`${id}.${t}`, zone);
    for (const { id, zone, kind, pins } of connectors) {
      const sides = kind === 'inline' ? ['a', 'b'] : ['a'];
      for (const { pin } of pins) for (const side of sides) points.set(`${id}.${pin}.${side}`, zone);
    }
  }
  return points;
}

export interface Comparison {
  book: number;
  drawn: number;
  unknown: string[];
  missing: string[];
}

export function compareWithBook(drawings: Drawing[], folder: string, unreached: string[]): Comparison {
  const book = bookPoints(folder);
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
  const missing = [...book].filter(([point]) => !drawn.has(point) && !unreached.includes(point));
  return { book: book.size, drawn: drawn.size, unknown, missing: missing.map(([point, zone]) => `${point} (${zone})`) };
}

/** The Hobbin 45's files as JSON, and the same with one thing broken. */
import { basename } from 'node:path';
import { loadFolder } from '../../src/cli/files.ts';
import type { Problem } from '../../src/scenario/problem.ts';
import { readBook } from '../../src/scenario/read-book.ts';

export const BOOK_FOLDER = 'scenarios/machines/hobbin-45';

type Json = Record<string, unknown>;

export function bookFiles(): Record<string, unknown> {
  const { values } = loadFolder(BOOK_FOLDER);
  return Object.fromEntries(Object.entries(values).map(([file, value]) => [basename(file), value]));
}

/** Records by file, list and id, to be changed in place. */
export class Edit {
  readonly files: Record<string, unknown> = bookFiles();

  file(name: string): Json {
    return this.files[name] as Json;
  }

  list(file: string, key: string): Json[] {
    return this.file(file)[key] as Json[];
  }

  index(file: string, key: string, id: string): number {
    return this.list(file, key).findIndex((record) => [record.id, record.code, record.part].includes(id));
  }

  record(file: string, key: string, id: string): Json {
    const index = this.index(file, key, id);
    if (index < 0) throw new Error(`the book has no ${id} in ${file}`);
    return this.list(file, key)[index];
  }

  wire(id: string): Json {
    return this.record('wires.json', 'wires', id);
  }

  /** `wires[17]` */
  path(file: string, key: string, id: string): string {
    return `${key}[${this.index(file, key, id)}]`;
  }

  pin(connector: string, pin: string): Json {
    const pins = this.record('connectors.json', 'connectors', connector).pins as Json[];
    return pins.find((p) => p.pin === pin) as Json;
  }

  /** `connectors[2].pins[4]` */
  pinPath(connector: string, pin: string): string {
    const pins = this.record('connectors.json', 'connectors', connector).pins as Json[];
    return `${this.path('connectors.json', 'connectors', connector)}.pins[${pins.findIndex((p) => p.pin === pin)}]`;
  }

  element(file: string, part: string, element: string): Json {
    const elements = this.record(file, 'parts', part).elements as Json[];
    return elements.find((e) => e.id === element) as Json;
  }

  elementPath(file: string, part: string, element: string): string {
    const elements = this.record(file, 'parts', part).elements as Json[];
    return `${this.path(file, 'parts', part)}.elements[${elements.findIndex((e) => e.id === element)}]`;
  }

  problems(): Problem[] {
    const result = readBook(this.files);
    return result.ok ? [] : result.problems;
  }
}

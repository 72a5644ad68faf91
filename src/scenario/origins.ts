/** Where each record of a merged book was read, so that a problem between two files names the right place in one. */
import type { Problem } from './problem.ts';

interface Place {
  file: string;
  path: string;
}

export class Origins {
  private readonly places = new WeakMap<object, Place>();
  private readonly keys = new Map<string, Place>();

  /** A top-level key of a file: its value, and each record in it where it is a list. */
  add(file: string, key: string, value: unknown): void {
    if (!this.keys.has(key)) this.keys.set(key, { file, path: key });
    if (!Array.isArray(value)) this.place(value, { file, path: key });
    else for (const [i, record] of value.entries()) this.place(record, { file, path: `${key}[${i}]` });
  }

  private place(record: unknown, place: Place): void {
    if (typeof record === 'object' && record !== null) this.places.set(record, place);
  }

  /** A problem at `inner` (like `elements[2].a`) of a record. */
  at(record: object, inner: string, code: string, found: string, expected: string): Problem {
    const place = this.places.get(record) ?? { file: '', path: '' };
    const dot = inner === '' || inner.startsWith('[') || place.path === '' ? '' : '.';
    return { file: place.file, path: `${place.path}${dot}${inner}`, code, found, expected };
  }

  /** A problem with a whole top-level key, or at a place below it. */
  atKey(key: string, inner: string, code: string, found: string, expected: string): Problem {
    const place = this.keys.get(key) ?? { file: '', path: key };
    return { file: place.file, path: `${place.path}${inner}`, code, found, expected };
  }
}

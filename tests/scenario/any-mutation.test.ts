import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readBook } from '../../src/scenario/read-book.ts';
import { bookFiles } from './book-fixture.ts';

type Container = Record<string, unknown> | unknown[];

const isContainer = (value: unknown): value is Container => typeof value === 'object' && value !== null;

/** Walks down by the steps, each taken modulo what there is, and changes what it comes to. */
function mutate(root: Container, steps: readonly number[], change: (parent: Container, key: string) => void): void {
  let at = root;
  for (const [i, step] of steps.entries()) {
    const keys = Object.keys(at);
    if (keys.length === 0) return;
    const key = keys[step % keys.length];
    const next = (at as Record<string, unknown>)[key];
    if (i === steps.length - 1 || !isContainer(next)) {
      change(at, key);
      return;
    }
    at = next;
  }
}

const steps = fc.array(fc.nat(10_000), { minLength: 1, maxLength: 9 });
const set = (value: unknown) => (parent: Container, key: string) => {
  (parent as Record<string, unknown>)[key] = value;
};

const change = fc.oneof(
  fc.jsonValue().map(set),
  fc.constantFrom(undefined, Number.NaN, Number.POSITIVE_INFINITY, 10n, Symbol('x'), () => 0, new Date(0)).map(set),
  fc.string().map(set),
  fc.constant((parent: Container, key: string) => {
    if (Array.isArray(parent)) parent.splice(Number(key), 1);
    else delete parent[key];
  }),
  fc.constant((parent: Container, key: string) => {
    if (Array.isArray(parent)) parent.push(structuredClone(parent[Number(key)]));
    else parent.__proto__x = parent[key];
  }),
  fc.constant((parent: Container, key: string) => set(parent)(parent, key)),
);

test('whatever is changed in the book, the reader answers and never throws', () => {
  const original = bookFiles();
  fc.assert(
    fc.property(fc.array(fc.tuple(steps, change), { minLength: 1, maxLength: 4 }), (mutations) => {
      const files = structuredClone(original);
      for (const [path, apply] of mutations) mutate(files, path, apply);
      const result = readBook(files);
      if (!result.ok) {
        for (const problem of result.problems) {
          expect(Object.values(problem).every((text) => typeof text === 'string')).toBe(true);
          expect(problem.code).toMatch(/^[a-z-]+$/);
        }
      }
    }),
    { numRuns: 150 },
  );
});

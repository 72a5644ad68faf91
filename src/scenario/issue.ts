/** Turns what zod says of a value into our problems: stable codes, what was found, what was expected. */
import type * as z from 'zod/mini';
import { type Problem, pathText, shown } from './problem.ts';

type Issue = z.core.$ZodIssue;

const EXPECTED: Record<string, string> = { int: 'a whole number', nonoptional: 'a value' };

function lookUp(value: unknown, path: readonly PropertyKey[]): unknown {
  let at = value;
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[key];
  }
  return at;
}

const bound = (issue: { inclusive?: boolean | undefined; exact?: boolean }, words: [string, string, string]): string =>
  issue.exact === true ? words[2] : words[issue.inclusive === true ? 0 : 1];

/** `1`, `1 or 2`, `1, 2 or 3`. */
const orList = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`;

function sized(origin: string): string {
  return origin === 'string' ? ' characters' : origin === 'array' || origin === 'set' ? ' entries' : '';
}

function expectedOf(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return EXPECTED[issue.expected] ?? issue.expected;
    case 'too_small':
      return `${bound(issue, ['at least', 'more than', 'exactly'])} ${issue.minimum}${sized(issue.origin)}`;
    case 'too_big':
      return `${bound(issue, ['at most', 'less than', 'exactly'])} ${issue.maximum}${sized(issue.origin)}`;
    case 'invalid_format':
      return issue.pattern === undefined ? issue.format : `text like ${issue.pattern}`;
    case 'invalid_value':
      return orList(issue.values.map((v) => shown(v)));
    case 'not_multiple_of':
      return `a multiple of ${issue.divisor}`;
    default:
      return 'a value of the form in the schema';
  }
}

const CODES: Partial<Record<Issue['code'], string>> = {
  invalid_type: 'wrong-type',
  too_small: 'out-of-range',
  too_big: 'out-of-range',
  invalid_format: 'wrong-form',
  invalid_value: 'not-allowed',
};

/** Of the forms that a value could have had, the one that it fits best: fewest faults, unknown keys counted each. */
function nearest(branches: readonly Issue[][]): Issue[] {
  const weight = (issues: Issue[]): number =>
    issues.reduce(
      (sum, i) => sum + (i.code === 'unrecognized_keys' ? i.keys.length : 1) + (i.path.length > 0 ? 0 : 1),
      0,
    );
  let best: Issue[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const branch of branches) {
    const w = weight(branch);
    if (w < least) [best, least] = [branch, w];
  }
  return best;
}

/** The values or types that a union allows, where each of its forms is one plain value or type; null otherwise. */
function plainForms(branches: readonly Issue[][]): string | null {
  const words: string[] = [];
  for (const [issue, ...more] of branches) {
    if (issue === undefined || more.length > 0 || issue.path.length > 0) return null;
    if (issue.code === 'invalid_value') words.push(...issue.values.map((v) => shown(v)));
    else if (issue.code === 'invalid_type') words.push(expectedOf(issue));
    else return null;
  }
  return orList([...new Set(words)]);
}

export function problemsOf(file: string, value: unknown, issues: readonly Issue[]): Problem[] {
  return issues.flatMap((issue) => problemOf(file, value, issue, []));
}

function problemOf(file: string, value: unknown, issue: Issue, parent: readonly PropertyKey[]): Problem[] {
  const path = [...parent, ...issue.path];
  const at = (more: readonly PropertyKey[] = []) => pathText([...path, ...more]);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      file,
      path: at([key]),
      code: 'unknown-key',
      found: shown(key),
      expected: 'only keys that the schema has',
    }));
  }
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const plain = plainForms(issue.errors);
    if (plain !== null) {
      const found = lookUp(value, path);
      return [
        {
          file,
          path: at(),
          code: found === undefined ? 'missing' : 'not-allowed',
          found: shown(found),
          expected: plain,
        },
      ];
    }
    return nearest(issue.errors).flatMap((inner) => problemOf(file, value, inner, path));
  }
  if (issue.code === 'invalid_key') {
    return [
      {
        file,
        path: at(),
        code: 'wrong-key',
        found: shown(issue.path.at(-1)),
        expected: 'a name without dots and blanks',
      },
    ];
  }
  if (issue.code === 'invalid_union') {
    const kinds = 'options' in issue && Array.isArray(issue.options) ? orList(issue.options.map((o) => shown(o))) : '';
    const found = lookUp(value, path);
    const code = found === undefined ? 'missing' : 'not-allowed';
    return [{ file, path: at(), code, found: shown(found), expected: kinds === '' ? expectedOf(issue) : kinds }];
  }
  const found = lookUp(value, path);
  const code = found === undefined ? 'missing' : (CODES[issue.code] ?? 'invalid');
  return [{ file, path: at(), code, found: shown(found), expected: expectedOf(issue) }];
}

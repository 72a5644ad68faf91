/** The search in the manual: what is found, and where in a text it stands. */
import type { Model } from '../../machine/index.ts';
import { chapters, type Leaf } from './pages.ts';

/** Up to this length a word is looked for as a whole: `mA` is not meant in `machine`. */
const SHORT = 3;

/** Patterns of a search, one a word. */
export function patternsOf(text: string): RegExp[] {
  return text
    .trim()
    .split(/\s+/)
    .filter((word) => word !== '')
    .map(patternOf);
}

function patternOf(word: string): RegExp {
  const plain = word.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
  if (word.length > SHORT) return new RegExp(plain, 'gi');
  // A number may have its letter behind it, as wires have: 206 finds 206D, K1 does not find K10.
  const before = /^\d/.test(word) ? '(?<![A-Za-z0-9])' : /^[A-Za-z]/.test(word) ? '(?<![A-Za-z])' : '';
  const after = /\d$/.test(word) ? '(?!\\d)' : /[A-Za-z]$/.test(word) ? '(?![A-Za-z0-9])' : '';
  // A capital inside is meant as it is written; one in front may be the keyboard's.
  const flags = /[A-Z]/.test(word.slice(1)) && /[a-z]/.test(word) ? 'g' : 'gi';
  return new RegExp(before + plain + after, flags);
}

/** Leaves and rows that have every word of the search. */
export function searchManual(model: Model, text: string): Leaf[] {
  const patterns = patternsOf(text);
  const has = (where: string): boolean => patterns.every((pattern) => where.search(pattern) >= 0);
  return chapters(model).flatMap(({ leaves }) =>
    leaves.flatMap((leaf): Leaf[] => {
      if (has(`${leaf.title} ${leaf.text ?? ''}`)) return [leaf];
      const rows = (leaf.rows ?? []).filter((row) => has(`${leaf.title} ${row.join(' ')}`));
      return rows.length > 0 ? [{ ...leaf, rows }] : [];
    }),
  );
}

export interface Stretch {
  text: string;
  hit: boolean;
}

/** A text in stretches, those that were looked for marked. */
export function marked(text: string, patterns: readonly RegExp[]): Stretch[] {
  const hits = patterns
    .flatMap((pattern) => [...text.matchAll(pattern)].map((m) => [m.index, m.index + m[0].length] as const))
    .sort((a, b) => a[0] - b[0]);
  const stretches: Stretch[] = [];
  let from = 0;
  for (const [start, end] of hits) {
    if (end <= from) continue;
    const at = Math.max(start, from);
    if (at > from) stretches.push({ text: text.slice(from, at), hit: false });
    stretches.push({ text: text.slice(at, end), hit: true });
    from = end;
  }
  if (from < text.length) stretches.push({ text: text.slice(from), hit: false });
  return stretches;
}

/** The book's own sentences with names for its numbers: `K10.30` becomes `intake heater relay (K10) terminal 30`. */
import type { Model } from '../../machine/index.ts';
import { localName, plainName } from './names.ts';
import { sentence, t } from './words.ts';

/** A number of the book, a terminal of it, or a row of numbers: `S1`, `K10.30`, `FM1-FM6`. */
const NUMBER = /\b([A-Z]{1,4}\d+)(?:\.([A-Za-z0-9]+\+?)|-([A-Z]{1,4}\d+))?(?![A-Za-z0-9])/g;

/** `208 off` is how a technician writes it; whoever reads it for the first time needs the word for what is off. */
export const wireOff = (text: string): string => text.replace(/(?<!\bwire )\b(\d{3}) off\b/gi, 'wire $1 off');

interface Said {
  out: string;
  /** Letters of the text after the number that are said with it. */
  skipped: number;
}

/** Each number is named once; after that it stands for itself, as in any manual. */
export function plain(model: Model, given: string): string {
  const text = wireOff(given);
  const known = new Set<string>();
  let out = '';
  let from = 0;
  for (const match of text.matchAll(NUMBER)) {
    const end = match.index + match[0].length;
    if (match.index < from) continue;
    const said = say(model, match, out + text.slice(from, match.index), text.slice(end), known);
    if (said === null) continue;
    out = said.out;
    from = end + said.skipped;
  }
  return out + text.slice(from);
}

function say(model: Model, match: RegExpExecArray, ahead: string, next: string, known: Set<string>): Said | null {
  const [, id = '', terminal, last] = match;
  const access = model.book.access.find((a) => a.id === id);
  if (access !== undefined) return { out: ahead + coverName(access.step, ahead), skipped: 0 };
  if (last !== undefined) return row(model, id, last, ahead);
  const name = plainName(model.book, id);
  if (name === null) return null;
  const spot = terminal === undefined ? '' : ` ${localName(model, `${id}.${terminal}`)}`;
  if (known.has(id)) return spot === '' ? null : { out: `${ahead}${id}${spot}`, skipped: 0 };
  known.add(id);
  const there = nameAhead(ahead, name);
  const before = ahead.slice(0, ahead.length - there.length);
  const first = /^[A-Z]/.test(there) || (there === '' && startsSentence(ahead)) ? sentence(name) : name;
  // Inside brackets there are no second ones.
  const inside = before.split('(').length > before.split(')').length;
  const bare = inside ? `${first} ${id}` : t('names.part', { id, name: first });
  const said = there === '' && wantsArticle(before) ? t('names.the', { what: bare }) : bare;
  return { out: before + said + spot, skipped: explained(next, name) };
}

const startsSentence = (ahead: string): boolean => ahead === '' || /[.!?]\s+$/.test(ahead);

/** In a row of numbers and at the head of a clause a name stands alone. */
const wantsArticle = (before: string): boolean => /[a-z] $/i.test(before) && !/\b(?:the|a|an|or|and) $/i.test(before);

/** The words before a number that are its name already: `Intake heater R1`. */
function nameAhead(ahead: string, name: string): string {
  const words = name.toLowerCase().split(' ');
  const said = ahead.match(/[A-Za-z-]+ /g) ?? [];
  if (said.length === 0 || !ahead.endsWith(said[said.length - 1])) return '';
  if (said[said.length - 1].trim().toLowerCase() !== words[words.length - 1]) return '';
  let length = 0;
  for (let i = said.length - 1; i >= 0; i--) {
    const next = said.slice(i).join('');
    if (!words.includes(said[i].trim().toLowerCase()) || !ahead.endsWith(next)) break;
    length = next.length;
  }
  return ahead.slice(ahead.length - length);
}

/** `S4 (seat switch)`: what the brackets say is said by the name. */
function explained(next: string, name: string): number {
  const words = name.toLowerCase().split(' ');
  const brackets = /^ \(([a-z][a-z ]*)\)/.exec(next);
  return brackets?.[1]?.split(' ').every((word) => words.includes(word)) ? brackets[0].length : 0;
}

/** `FM1-FM6`: what the names have in common, in the plural. */
function row({ book }: Model, first: string, last: string, ahead: string): Said | null {
  const [one, other] = [plainName(book, first), plainName(book, last)];
  if (one === null || other === null) return null;
  const [a, b] = [one.split(' ').reverse(), other.split(' ').reverse()];
  const alike = a.findIndex((word, i) => word !== b[i]);
  const what = a
    .slice(0, alike < 0 ? a.length : alike)
    .reverse()
    .join(' ');
  return { out: ahead + t('names.row', { what, first, last }), skipped: 0 };
}

/** An access step by what it opens: `belly pan`; after "before" as the work itself: `you remove the belly pan`. */
function coverName(step: string, ahead: string): string {
  const bare = step.replace(/ \([^)]*\)/g, '');
  const thing = bare.replace(/^.* and open /, '').replace(/^(?:take off|remove|open|lower) /, '');
  if (!ahead.endsWith('before ')) return thing;
  return t('names.youDo', { step: bare.replace(/^(take off|remove|open|lower|tilt) /, '$1 the ') });
}

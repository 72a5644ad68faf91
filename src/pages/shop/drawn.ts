/** What of the book is drawn, by number or name. */
import type { Model } from '../../machine/index.ts';
import { sheetDrawing, sheets } from '../state/sheets.ts';
import { partName, pointName, printedName, wireName } from '../words/names.ts';
import { sentence } from '../words/words.ts';

export interface Drawn {
  /** Part or point that is drawn. */
  id: string;
  name: string;
}

interface Weighed {
  exact: Drawn[];
  others: Drawn[];
}

/** Things by that name among what is drawn; a number that is the text comes first: `K1` before `K10`. */
export function drawnBy(model: Model, ids: ReadonlySet<string>, text: string): Drawn[] {
  const { exact, others } = weighed(model, ids, text);
  return [...exact, ...others];
}

function weighed(model: Model, ids: ReadonlySet<string>, text: string): Weighed {
  const wanted = text.trim().toLowerCase().replaceAll(/\s+/g, ' ');
  if (wanted === '') return { exact: [], others: [] };
  const { book } = model;
  const exact: Drawn[] = [];
  const begun: Drawn[] = [];
  const named: Drawn[] = [];
  const weigh = (number: string, drawn: Drawn): void => {
    if (number === wanted) exact.push(drawn);
    else if (number.startsWith(wanted)) begun.push(drawn);
    else if (drawn.name.toLowerCase().includes(wanted)) named.push(drawn);
  };
  for (const { id } of [...book.parts, ...book.connectors]) {
    if (ids.has(id)) weigh(id.toLowerCase(), { id, name: partName(book, id) });
  }
  const number = wanted.replace(/^wire /, '');
  for (const wire of book.wires) {
    const id = [wire.from, wire.to].find((end) => ids.has(end));
    if (id !== undefined && wire.id.toLowerCase().startsWith(number))
      (wire.id.toLowerCase() === number ? exact : begun).push({ id, name: sentence(wireName(wire)) });
  }
  for (const id of ids) {
    if (id.includes('.') && printedName(id).toLowerCase() === wanted.replace(/ pin /, ' ').replace('.', ' '))
      exact.push({ id, name: sentence(pointName(model, id)) });
  }
  return { exact, others: [...begun, ...named] };
}

export interface OnSheet {
  sheet: string;
  drawn: Drawn;
  /** The text is its number, not the beginning of another's or a word of its name. */
  exact: boolean;
}

/** What another sheet has by that name; what has that very number before the rest. */
export function onOtherSheet(model: Model, open: string | null, text: string): OnSheet | null {
  const found: OnSheet[] = [];
  for (const { id: sheet } of sheets) {
    const drawing = sheet === open ? null : sheetDrawing(sheet);
    if (drawing === null) continue;
    const ids = new Set([...drawing.parts.map((p) => p.part), ...drawing.points.map((p) => p.point)]);
    const { exact, others } = weighed(model, ids, text);
    found.push(...exact.map((drawn) => ({ sheet, drawn, exact: true })));
    found.push(...others.map((drawn) => ({ sheet, drawn, exact: false })));
  }
  return found.find(({ exact }) => exact) ?? found[0] ?? null;
}

/** Has something that is drawn here that very number? */
export const isNumbered = (model: Model, ids: ReadonlySet<string>, text: string): boolean =>
  weighed(model, ids, text).exact.length > 0;

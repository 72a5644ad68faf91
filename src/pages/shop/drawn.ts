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

/** Things by that name among what is drawn; a number that is the text comes first: `K1` before `K10`. */
export function drawnBy(model: Model, ids: ReadonlySet<string>, text: string): Drawn[] {
  const wanted = text.trim().toLowerCase().replaceAll(/\s+/g, ' ');
  if (wanted === '') return [];
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
  return [...exact, ...begun, ...named];
}

/** The first other sheet that has something by that name. */
export function onOtherSheet(model: Model, open: string | null, text: string): { sheet: string; drawn: Drawn } | null {
  for (const { id: sheet } of sheets) {
    const drawing = sheet === open ? null : sheetDrawing(sheet);
    if (drawing === null) continue;
    const ids = new Set([...drawing.parts.map((p) => p.part), ...drawing.points.map((p) => p.point)]);
    const [drawn] = drawnBy(model, ids, text);
    if (drawn !== undefined) return { sheet, drawn };
  }
  return null;
}

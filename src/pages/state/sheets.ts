/** The schematic's sheets, each laid out when it is first opened. */
import type { Drawing } from '../../game/drawing.ts';
import { layoutSheet } from '../../game/sheet/index.ts';
import { type SheetSpec, sheetSchema } from '../../scenario/schema-sheet.ts';
import { t } from '../words/words.ts';
import { catalog } from './catalog.ts';
import { closeSheet, openSheet, ui } from './ui.ts';

const files = import.meta.glob<unknown>('../../../scenarios/machines/hobbin-45/sheets/*.json', {
  eager: true,
  import: 'default',
});

export const sheets: readonly SheetSpec[] = Object.values(files)
  .map((file) => sheetSchema.parse(file))
  .sort((a, b) => a.number - b.number);

/** The sheet that was last open beside the place, at first the first one; or none. */
export function toggleSheet(): void {
  const { sheet, sheetLast } = ui.value;
  const first = sheets.find(({ id }) => id === sheetLast) ?? sheets[0];
  if (sheet !== null) closeSheet();
  else if (first !== undefined) openSheet(first.id);
}

/** As it is listed: `1 · Supply and start`. */
export function sheetTitle(id: string): string {
  const { number, title } = sheets.find((s) => s.id === id) ?? {};
  return number === undefined ? '' : t('shop.sheetName', { number, title });
}

const laid = new Map<string, Drawing>();

export function sheetDrawing(id: string): Drawing | null {
  const known = laid.get(id);
  if (known !== undefined) return known;
  const spec = sheets.find((s) => s.id === id);
  if (spec === undefined) return null;
  const drawing = layoutSheet(catalog().book, spec, sheets);
  laid.set(id, drawing);
  return drawing;
}

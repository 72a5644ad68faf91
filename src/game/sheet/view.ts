/** A whole drawing, with every plug together, as one SVG text: for looking at it outside the game. */
import type { Drawing } from '../drawing.ts';

/** Colours by token name. `style` is put in as it is: a font, for one. */
export function sheetToSvg(drawing: Drawing, tokens: Readonly<Record<string, string>>, style = ''): string {
  const { width, height, title } = drawing;
  const atRest = drawing.layers.filter((layer) => (layer.when ?? []).every((rule) => !rule.is));
  const body = atRest
    .map((layer) => layer.svg)
    .join('')
    .replace(/\{([\w-]+)\}/g, (_, name: string) => tokens[name] ?? 'magenta');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" ` +
    `font-family="Barlow Condensed"><title>${title}</title>${style}${body}</svg>`
  );
}

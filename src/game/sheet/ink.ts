/** Strokes of a sheet as SVG text: presentation attributes only, colours as `{token}`. */
const round = (n: number): string => String(Math.round(n * 100) / 100);

export type Attributes = Record<string, string | number | undefined>;

export function tag(name: string, attributes: Attributes, body?: string): string {
  let text = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) text += ` ${key}="${typeof value === 'number' ? round(value) : value}"`;
  }
  return body === undefined ? `${text}/>` : `${text}>${body}</${name}>`;
}

/** Widths of strokes (style sheet, section 1), units. */
export const STROKE = { rail: 4.2, contact: 2.4, symbol: 2.2, device: 2.6, detail: 1.5, hair: 0.9 };

const stroked = (width: number): Attributes => ({
  stroke: '{ink}',
  'stroke-width': width,
  'stroke-linecap': 'round',
  'stroke-linejoin': 'round',
});

export const path = (d: string, width: number = STROKE.symbol, more: Attributes = {}): string =>
  tag('path', { d, fill: 'none', ...stroked(width), ...more });

export const rect = (
  x: number,
  y: number,
  w: number,
  h: number,
  width: number = STROKE.symbol,
  more: Attributes = {},
) => tag('rect', { x, y, width: w, height: h, fill: '{paper}', ...stroked(width), ...more });

export const circle = (x: number, y: number, r: number, width: number = STROKE.symbol, more: Attributes = {}): string =>
  tag('circle', { cx: x, cy: y, r, fill: '{paper}', ...stroked(width), ...more });

export const solid = (d: string): string => tag('path', { d, fill: '{ink}' });
export const dot = (x: number, y: number): string => tag('circle', { cx: x, cy: y, r: 5, fill: '{ink}' });
export const DASHED: Attributes = { 'stroke-dasharray': '7 4' };
export const escapeText = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

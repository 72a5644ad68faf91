/**
 * Words in a drawing as outlines: an SVG shown as an image sees no fonts of the page, and fonts inside an image are not
 * dependable everywhere. Takes what drawings and sheets write: <text> with x, y, font-size, font-weight, text-anchor.
 */

/** By character: advance and outline, thousandths of the type size, y down. */
export type Face = Record<string, [number, string]>;
export interface Lettering {
  500: Face;
  600: Face;
}

/** Letter spacing of the labels, units. */
const SPACING = 0.2;
const TEXT = /<text\b([^>]*)>([^<]*)<\/text>/g;
const ATTRIBUTE = /([\w-]+)="([^"]*)"/g;
const ENTITIES: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
const OWN = new Set([
  'x',
  'y',
  'font-size',
  'font-weight',
  'text-anchor',
  'letter-spacing',
  'font-family',
  'paint-order',
]);

export function lettered(svg: string, lettering: Lettering): string {
  return svg.replace(TEXT, (_, attributes: string, content: string) => {
    const look: Record<string, string> = {};
    for (const [, name, value] of attributes.matchAll(ATTRIBUTE)) look[name] = value;
    const face = Number(look['font-weight'] ?? 500) >= 600 ? lettering[600] : lettering[500];
    const text = content.replace(/&(\w+);/g, (whole, name: string) => ENTITIES[name] ?? whole);
    const d = outline(text, face, look);
    const write = (left: (name: string) => boolean): string =>
      Object.entries(look)
        .filter(([name]) => !OWN.has(name) && left(name))
        .map(([name, value]) => ` ${name}="${value}"`)
        .join('');
    const rest = write(() => true);
    if (d === '') return '';
    // A halo lies under the letters: drawn apart, since not every renderer minds the order of painting.
    if (look['paint-order'] !== 'stroke') return `<path${rest} d="${d}"/>`;
    return `<path${rest} d="${d}"/><path${write((name) => !name.startsWith('stroke'))} d="${d}"/>`;
  });
}

/** Width of a line of type, units. */
export function widthOf(text: string, face: Face, size: number, spacing = SPACING): number {
  let width = 0;
  for (const character of text) width += (glyph(face, character)[0] / 1000) * size + spacing;
  return width;
}

const glyph = (face: Face, character: string): [number, string] => face[character] ?? face['?'] ?? [400, ''];

function outline(text: string, face: Face, look: Record<string, string>): string {
  const size = Number(look['font-size'] ?? 16);
  const spacing = Number(look['letter-spacing'] ?? SPACING);
  const share = look['text-anchor'] === 'middle' ? 0.5 : look['text-anchor'] === 'end' ? 1 : 0;
  let x = Number(look.x ?? 0) - (share === 0 ? 0 : share * widthOf(text, face, size, spacing));
  const y = Number(look.y ?? 0);
  let d = '';
  for (const character of text) {
    const [advance, path] = glyph(face, character);
    let isX = false;
    const left = x;
    d += path.replace(/-?\d+/g, (n) => {
      isX = !isX;
      const at = (Number(n) / 1000) * size;
      return String(Math.round(((isX ? left : y) + at) * 100) / 100);
    });
    x += (advance / 1000) * size + spacing;
  }
  return d;
}

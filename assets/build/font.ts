/**
 * The label face as outlines. An SVG that is shown as an image cannot see the page's fonts, so its words are drawn as
 * paths. Reads WOFF 1 with TrueType outlines (Barlow Condensed, OFL) and keeps what the drawings can need.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { inflateSync } from 'node:zlib';
import type { Lettering } from '../../src/game/lettering.ts';

const CHARACTERS = ` !"#%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[]_abcdefghijklmnopqrstuvwxyz|~°²³·¼½±×µ–—−ÁÉÍÓÚÑÜáéíóúñü¿¡«»`;
/** The face has no omega: one of ours in its weight of line, thousandths of the type size. */
const OMEGA = {
  500: 'M28 0L28 -76L118 -76Q40 -190 40 -380Q40 -708 250 -708Q460 -708 460 -380Q460 -190 382 -76L472 -76L472 0L272 0L272 -70Q374 -170 374 -380Q374 -628 250 -628Q126 -628 126 -380Q126 -170 228 -70L228 0Z',
  600: 'M22 0L22 -92L112 -92Q34 -200 34 -384Q34 -712 250 -712Q466 -712 466 -384Q466 -200 388 -92L478 -92L478 0L270 0L270 -84Q360 -180 360 -384Q360 -610 250 -610Q140 -610 140 -384Q140 -180 230 -84L230 0Z',
};

export function readLettering(): Lettering {
  const require = createRequire(import.meta.url);
  const face = (weight: 500 | 600) => {
    const file = require.resolve(`@fontsource/barlow-condensed/files/barlow-condensed-latin-${weight}-normal.woff`);
    return { ...outlines(readFileSync(file)), Ω: [500, OMEGA[weight]] as [number, string] };
  };
  return { 500: face(500), 600: face(600) };
}

function tables(woff: Buffer): Map<string, Buffer> {
  if (woff.toString('latin1', 0, 4) !== 'wOFF') throw new Error('not a WOFF file');
  const found = new Map<string, Buffer>();
  for (let i = 0; i < woff.readUInt16BE(12); i += 1) {
    const entry = 44 + 20 * i;
    const offset = woff.readUInt32BE(entry + 4);
    const packed = woff.subarray(offset, offset + woff.readUInt32BE(entry + 8));
    const isPacked = packed.length < woff.readUInt32BE(entry + 12);
    found.set(woff.toString('latin1', entry, entry + 4), isPacked ? inflateSync(packed) : packed);
  }
  return found;
}

function outlines(woff: Buffer): Record<string, [number, string]> {
  const found = tables(woff);
  const table = (name: string): Buffer => {
    const data = found.get(name);
    if (!data) throw new Error(`the face has no ${name} table`);
    return data;
  };
  const [head, hmtx, glyf, loca] = [table('head'), table('hmtx'), table('glyf'), table('loca')];
  const scale = 1000 / head.readUInt16BE(18);
  const longOffsets = head.readInt16BE(50) === 1;
  const widths = table('hhea').readUInt16BE(34);
  const at = (glyph: number): number => (longOffsets ? loca.readUInt32BE(4 * glyph) : 2 * loca.readUInt16BE(2 * glyph));
  const glyphOf = characterMap(table('cmap'));
  const out: Record<string, [number, string]> = {};
  for (const character of CHARACTERS) {
    const glyph = glyphOf(character.codePointAt(0) ?? 0);
    if (glyph === 0) throw new Error(`the face has no "${character}"`);
    const path = contours(glyf, at, glyph).map((c) => contourPath(c, scale));
    out[character] = [Math.round(hmtx.readUInt16BE(4 * Math.min(glyph, widths - 1)) * scale), path.join('')];
  }
  return out;
}

/** Format 4 of the Unicode BMP. */
function characterMap(cmap: Buffer): (code: number) => number {
  let table = -1;
  for (let i = 0; i < cmap.readUInt16BE(2); i += 1) {
    const offset = cmap.readUInt32BE(8 + 8 * i);
    if (cmap.readUInt16BE(offset) === 4) table = offset;
  }
  if (table < 0) throw new Error('no format 4 character map');
  const segments = cmap.readUInt16BE(table + 6) / 2;
  const [ends, starts] = [table + 14, table + 16 + 2 * segments];
  const [deltas, ranges] = [starts + 2 * segments, starts + 4 * segments];
  return (code) => {
    for (let i = 0; i < segments; i += 1) {
      if (code > cmap.readUInt16BE(ends + 2 * i)) continue;
      const start = cmap.readUInt16BE(starts + 2 * i);
      if (code < start) return 0;
      const delta = cmap.readUInt16BE(deltas + 2 * i);
      const range = cmap.readUInt16BE(ranges + 2 * i);
      if (range === 0) return (code + delta) & 0xffff;
      const glyph = cmap.readUInt16BE(ranges + 2 * i + range + 2 * (code - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
}

interface Spot {
  x: number;
  y: number;
  on: boolean;
}

function contours(glyf: Buffer, at: (glyph: number) => number, glyph: number): Spot[][] {
  const start = at(glyph);
  if (at(glyph + 1) === start) return [];
  const count = glyf.readInt16BE(start);
  return count >= 0 ? simple(glyf, start, count) : composite(glyf, at, start);
}

function simple(glyf: Buffer, start: number, count: number): Spot[][] {
  const ends = Array.from({ length: count }, (_, i) => glyf.readUInt16BE(start + 10 + 2 * i));
  const total = (ends[count - 1] ?? -1) + 1;
  let cursor = start + 10 + 2 * count;
  cursor += 2 + glyf.readUInt16BE(cursor);
  const flags: number[] = [];
  while (flags.length < total) {
    const flag = glyf[cursor++];
    const repeats = flag & 8 ? glyf[cursor++] : 0;
    for (let i = 0; i <= repeats; i += 1) flags.push(flag);
  }
  const read = (short: number, same: number): number[] => {
    let value = 0;
    return flags.map((flag) => {
      if (flag & short) value += flag & same ? glyf[cursor++] : -glyf[cursor++];
      else if (!(flag & same)) {
        value += glyf.readInt16BE(cursor);
        cursor += 2;
      }
      return value;
    });
  };
  const xs = read(2, 16);
  const ys = read(4, 32);
  const spots = flags.map((flag, i) => ({ x: xs[i], y: ys[i], on: (flag & 1) === 1 }));
  return ends.map((end, i) => spots.slice(i === 0 ? 0 : ends[i - 1] + 1, end + 1));
}

function composite(glyf: Buffer, at: (glyph: number) => number, start: number): Spot[][] {
  const out: Spot[][] = [];
  let cursor = start + 10;
  for (let more = true; more; ) {
    const flags = glyf.readUInt16BE(cursor);
    const parts = contours(glyf, at, glyf.readUInt16BE(cursor + 2));
    if (flags & 0xc8 || !(flags & 2)) throw new Error('a scaled or anchored composite glyph');
    const [dx, dy] =
      flags & 1
        ? [glyf.readInt16BE(cursor + 4), glyf.readInt16BE(cursor + 6)]
        : [glyf.readInt8(cursor + 4), glyf.readInt8(cursor + 5)];
    cursor += flags & 1 ? 8 : 6;
    for (const contour of parts) out.push(contour.map((s) => ({ ...s, x: s.x + dx, y: s.y + dy })));
    more = (flags & 0x20) !== 0;
  }
  return out;
}

/** Quadratic splines; between two control points lies a point half way. Y turns over: down is positive in SVG. */
function contourPath(contour: Spot[], scale: number): string {
  const n = contour.length;
  if (n < 2) return '';
  const write = (s: { x: number; y: number }): string => `${Math.round(s.x * scale)} ${Math.round(-s.y * scale)}`;
  const middle = (a: Spot, b: Spot) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
  const first = contour.findIndex((s) => s.on);
  const start = first >= 0 ? contour[first] : middle(contour[0], contour[n - 1]);
  let d = `M${write(start)}`;
  let control: Spot | null = null;
  for (let i = 1; i <= n; i += 1) {
    const spot = contour[(Math.max(first, 0) + i) % n];
    if (spot.on) d += control ? `Q${write(control)} ${write(spot)}` : `L${write(spot)}`;
    else if (control) d += `Q${write(control)} ${write(middle(control, spot))}`;
    control = spot.on ? null : spot;
  }
  return `${d}${control ? `Q${write(control)} ${write(start)}` : ''}Z`;
}

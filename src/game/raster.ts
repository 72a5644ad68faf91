/** SVG fragments to canvases. An image sees nothing of the page: no fonts, no styles; so nothing of these is needed. */
import { coloured } from './colours.ts';
import type { Box, Drawing, Layer, Theme } from './drawing.ts';
import { type Lettering, lettered } from './lettering.ts';

/** A piece to be painted: a fragment with the transform that its state asks for. */
export interface Piece {
  svg: string;
  transform?: string;
}

/** Longest side of a texture that every machine takes, pixels. */
export const LARGEST = 4096;

/** A part of a drawing at a scale, on the grid of the device's pixels. */
export interface Region {
  scale: number;
  left: number;
  top: number;
  width: number;
  height: number;
}

/** The pixels that a box takes at a scale, whole ones. */
export function regionOf(box: Box, scale: number): Region {
  const [left, top] = [Math.floor(box.x * scale), Math.floor(box.y * scale)];
  const width = Math.max(1, Math.ceil((box.x + box.w) * scale) - left);
  const height = Math.max(1, Math.ceil((box.y + box.h) * scale) - top);
  return { scale, left, top, width, height };
}

/** The same, coarser when it would be too large for a texture. */
export function limitedRegion(box: Box, scale: number): Region {
  const longest = Math.max(box.w, box.h) * scale + 2;
  return regionOf(box, longest > LARGEST ? (scale * LARGEST) / longest : scale);
}

export function svgDocument(pieces: Piece[], { scale, left, top, width, height }: Region): string {
  const body = pieces
    .map(({ svg, transform }) => (transform ? `<g transform="${transform}">${svg}</g>` : svg))
    .join('');
  const viewBox = [left, top, width, height].map((n) => n / scale).join(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${viewBox}" width="${width}" height="${height}">${body}</svg>`;
}

export async function rasterise(svg: string, width: number, height: number): Promise<HTMLCanvasElement> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    canvas.getContext('2d')?.drawImage(image, 0, 0, width, height);
    return canvas;
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** A piece that the build step has marked: a wire's line, what is fitted to its end. */
const MARKED = /<!--(\w[\w.]*)-->.*?<!--\/\1-->/gs;

const WORD = /\{\{(\w+)\}\}/g;

/** Is every word of a display known? A dark one has none. */
export const isWritten = (svg: string, words: Record<string, number | string>): boolean =>
  [...svg.matchAll(WORD)].every(([, name]) => name !== undefined && Object.hasOwn(words, name));

/** Lettered and coloured fragments, kept for as long as their drawing is shown. */
export class Fragments {
  private readonly outlined = new Map<Layer, string>();
  private readonly painted = new Map<Layer, string>();
  private theme: Theme = 'light';

  constructor(
    readonly drawing: Drawing,
    private readonly lettering: Lettering,
  ) {}

  /** A layer in which some marked pieces are drawn otherwise, or left out. */
  with(layer: Layer, theme: Theme, change: ReadonlyMap<string, string>): string {
    const whole = this.of(layer, theme);
    if (change.size === 0) return whole;
    return whole.replace(MARKED, (piece: string, name: string) => change.get(name) ?? piece);
  }

  of(layer: Layer, theme: Theme): string {
    if (theme !== this.theme) this.painted.clear();
    this.theme = theme;
    let done = this.painted.get(layer);
    if (done === undefined) {
      done = coloured(this.outline(layer), theme);
      this.painted.set(layer, done);
    }
    return done;
  }

  /** A layer with the words of its display filled in; not kept. */
  filled(layer: Layer, theme: Theme, words: Record<string, number | string>): string {
    const svg = layer.svg.replace(WORD, (_, name: string) => String(words[name] ?? ''));
    return coloured(lettered(svg, this.lettering), theme);
  }

  lettered = (svg: string, theme: Theme): string => coloured(lettered(svg, this.lettering), theme);

  private outline(layer: Layer): string {
    let done = this.outlined.get(layer);
    if (done === undefined) {
      done = lettered(layer.svg, this.lettering);
      this.outlined.set(layer, done);
    }
    return done;
  }
}

/** The cloth below a drawing, where pulled fuses and relays lie: there a fuse's link can be looked at. */
import type { Box, Drawing, Layer } from './drawing.ts';
import type { Fragments, Piece } from './raster.ts';
import type { StageView } from './view.ts';
import { contains, holds } from './visible.ts';

const GAP = 30;
const EDGE = 12;
/** Height to which a part on the cloth is drawn: a small fuse larger, a relay smaller, so that both can be judged. */
const TALL = 124;
const LABEL = 30;

interface Lying {
  part: string;
  layers: Layer[];
  box: Box;
  x: number;
  y: number;
  scale: number;
}

/** What lies on the cloth and how far from its socket, left to right as it was pulled. */
export function lying(drawing: Drawing, view: StageView): Lying[] {
  let x = 40 + EDGE;
  const found: Lying[] = [];
  for (const part of view.pulled) {
    const layers = drawing.layers.filter((l) => l.part === part && (l.role === 'plugged' || l.role === 'link'));
    const body = layers.find((l) => l.role === 'plugged');
    if (!body) continue;
    const shown = layers.filter((l) => (l.when ?? []).every((r) => r.topic === 'pulled' || holds(r, view)));
    const { box } = body;
    const scale = Math.min(2.1, Math.max(0.55, TALL / box.h));
    found.push({ part, layers: shown, box, x, y: drawing.height + EDGE + 8, scale });
    x += Math.max(56, box.w * scale) + GAP;
  }
  return found;
}

/** The part on the cloth at a spot of the drawing, with its name below it. */
export function lyingAt(drawing: Drawing, view: StageView, x: number, y: number): { part: string; box: Box } | null {
  for (const { part, box, x: left, y: top, scale } of lying(drawing, view)) {
    const lies = { x: left, y: top, w: box.w * scale, h: box.h * scale };
    const reach = { x: left - GAP / 2, y: top - EDGE, w: Math.max(56, lies.w) + GAP, h: lies.h + LABEL + 2 * EDGE };
    if (contains(reach, x, y)) return { part, box: lies };
  }
  return null;
}

export function clothBox(drawing: Drawing, view: StageView): Box {
  const items = lying(drawing, view);
  const tallest = Math.max(0, ...items.map((i) => i.box.h * i.scale));
  const h = items.length === 0 ? 0 : tallest + LABEL + 2 * EDGE + 20;
  return { x: 0, y: 0, w: drawing.width, h: drawing.height + h };
}

export function clothPieces(fragments: Fragments, view: StageView): Piece[] {
  const { drawing } = fragments;
  const items = lying(drawing, view);
  if (items.length === 0) return [];
  const { h } = clothBox(drawing, view);
  const [top, height] = [drawing.height + 8, h - drawing.height - 16];
  const last = items[items.length - 1];
  const width = Math.max(360, last.x + last.box.w * last.scale + EDGE - 40);
  const cloth =
    `<rect x="40" y="${top}" width="${width}" height="${height}" rx="6" fill="{paper}" stroke="{ink}" stroke-width="1.5"/>` +
    `<path d="M48 ${top + 8}H${32 + width}M48 ${top + height - 8}H${32 + width}" fill="none" stroke="{paper4}" stroke-width="3"/>`;
  const pieces: Piece[] = [{ svg: fragments.lettered(cloth, view.theme) }];
  for (const { part, layers, box, x, y, scale } of items) {
    const transform = `translate(${x} ${y}) scale(${scale}) translate(${-box.x} ${-box.y})`;
    for (const layer of layers) pieces.push({ svg: fragments.of(layer, view.theme), transform });
    const middle = x + (box.w * scale) / 2;
    const label = `<text x="${middle}" y="${top + height - 18}" font-size="22" font-weight="600" fill="{ink}" text-anchor="middle">${part}</text>`;
    pieces.push({ svg: fragments.lettered(label, view.theme) });
  }
  return pieces;
}

/** The cloth below a drawing, where pulled fuses and relays lie: there a fuse's link can be looked at. */
import type { Box, Drawing, Layer } from './drawing.ts';
import type { Fragments, Piece } from './raster.ts';
import type { StageView } from './view.ts';
import { holds } from './visible.ts';

const GAP = 28;
const EDGE = 20;

interface Lying {
  part: string;
  layers: Layer[];
  box: Box;
  dx: number;
  dy: number;
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
    found.push({ part, layers: shown, box, dx: x - box.x, dy: drawing.height + EDGE + 8 - box.y });
    x += box.w + GAP;
  }
  return found;
}

export function clothBox(drawing: Drawing, view: StageView): Box {
  const items = lying(drawing, view);
  const tallest = Math.max(0, ...items.map((i) => i.box.h));
  const h = items.length === 0 ? 0 : tallest + 2 * EDGE + 20;
  return { x: 0, y: 0, w: drawing.width, h: drawing.height + h };
}

export function clothPieces(fragments: Fragments, view: StageView): Piece[] {
  const { drawing } = fragments;
  const items = lying(drawing, view);
  if (items.length === 0) return [];
  const { h } = clothBox(drawing, view);
  const [top, height] = [drawing.height + 8, h - drawing.height - 16];
  const last = items[items.length - 1];
  const width = Math.max(360, last.box.x + last.dx + last.box.w + EDGE - 40);
  const cloth =
    `<rect x="40" y="${top}" width="${width}" height="${height}" rx="6" fill="{paper}" stroke="{ink}" stroke-width="1.5"/>` +
    `<path d="M48 ${top + 8}H${32 + width}M48 ${top + height - 8}H${32 + width}" fill="none" stroke="{paper4}" stroke-width="3"/>`;
  const pieces: Piece[] = [{ svg: fragments.lettered(cloth, view.theme) }];
  for (const { layers, dx, dy } of items) {
    for (const layer of layers) pieces.push({ svg: fragments.of(layer, view.theme), transform: `translate(${dx} ${dy})` });
  }
  return pieces;
}

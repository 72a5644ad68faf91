/** Orders what the walk found: as few still layers as the drawing order allows, with the moving pieces between them. */
import type { Box, Layer } from '../../src/game/drawing.ts';
import { boxOf, overlap, rotation, union } from './bounds.ts';
import type { Item } from './items.ts';

interface Ranked extends Item {
  tier: number;
  swept: Box;
}

/**
 * The tier of a still piece is one more than that of any moving piece below it that it overlaps, so that a still layer
 * needs to be split only where something moves between two of its parts.
 */
export function rank(items: Item[]): Ranked[] {
  const ranked: Ranked[] = [];
  for (const item of items) {
    const swept = sweep(item);
    let tier = 0;
    for (const below of ranked) {
      const step = below.live && !item.live ? 1 : 0;
      if (below.tier + step > tier && overlap(below.swept, swept)) tier = below.tier + step;
    }
    ranked.push({ ...item, tier, swept });
  }
  return ranked;
}

/** The room that a piece takes in all its poses. */
function sweep({ box, motion, shift }: Item): Box {
  let swept: Box | null = box;
  const corners = [box.x, box.y, box.x + box.w, box.y, box.x + box.w, box.y + box.h, box.x, box.y + box.h];
  for (const { turn = 0, dx = 0, dy = 0 } of Object.values(motion?.poses ?? {})) {
    const matrix = rotation(turn, motion?.pivot?.x ?? 0, motion?.pivot?.y ?? 0);
    matrix[4] += dx;
    matrix[5] += dy;
    swept = union(swept, boxOf(corners, matrix));
  }
  if (shift) swept = union(swept, { ...box, x: box.x + shift.dx, y: box.y + shift.dy });
  return swept ?? box;
}

const signature = (item: Ranked): string =>
  JSON.stringify([
    item.tier,
    item.live,
    item.role,
    item.part,
    item.when,
    item.shift,
    item.motion,
    item.live && item.id,
  ]);

/** Still pieces first in each tier, then what moves; neighbours under the same rules become one layer. */
export function toLayers(items: Item[]): Layer[] {
  const ranked = rank(items);
  const order = (r: Ranked): number => 2 * r.tier + (r.live ? 1 : 0);
  const sorted = ranked.map((r, i) => ({ r, i })).sort((a, b) => order(a.r) - order(b.r) || a.i - b.i);
  const layers: Layer[] = [];
  const used = new Map<string, number>();
  let last = '';
  for (const { r } of sorted) {
    const key = signature(r);
    const top = layers[layers.length - 1];
    if (top && key === last) {
      top.svg += r.svg;
      top.box = union(top.box, r.box) ?? top.box;
      continue;
    }
    last = key;
    const count = used.get(r.id) ?? 0;
    used.set(r.id, count + 1);
    const layer: Layer = {
      id: count === 0 ? r.id : `${r.id}.${count}`,
      role: r.role,
      tier: r.tier,
      svg: r.svg,
      box: r.box,
    };
    if (r.part) layer.part = r.part;
    if (r.when.length > 0) layer.when = r.when;
    if (r.shift) layer.shift = r.shift;
    if (r.motion) layer.motion = r.motion;
    layers.push(layer);
  }
  return layers;
}

/** One drawing from its source: layers, points, controls, areas and parts. */
import type { Area, Box, Drawing, DrawnControl, DrawnPart } from '../../src/game/drawing.ts';
import { boxOf, pathPoints } from './bounds.ts';
import { type Growing, hasClass, outlinePoints, type Palette, type Walk } from './items.ts';
import { toLayers } from './layers.ts';
import type { Rules } from './rules.ts';
import { markFittings } from './runs.ts';
import { type Element, elements, findById, parseSvg, textOf } from './svg.ts';
import { startWalk, TOP_CONTEXT, visit } from './walk.ts';

/** How far a plug's half is drawn back from the other when parted, units. */
const PARTED = 18;
/** A finger may miss a place's sign by this much, units. */
const SIGN_MARGIN = 10;

export function assemble(id: string, source: string, rules: Rules, palette: Palette): Drawing {
  const root = parseSvg(source);
  const walk = startWalk(id, root, rules, palette);
  for (const child of elements(root)) visit(child, TOP_CONTEXT, walk);
  drawApart(walk);
  emptySockets(walk);
  markFittings(walk);
  const title = findById(root, 'title');
  return {
    id,
    width: Number(root.attributes.width),
    height: Number(root.attributes.height),
    title: title ? textOf(title) : id,
    layers: toLayers(walk.items).map((layer) => ({ ...layer, box: tidy(layer.box) })),
    points: walk.points.map((p) => ({ ...p, x: tenth(p.x), y: tenth(p.y), r: tenth(p.r) })),
    areas: areas(walk),
    controls: controls(walk),
    runs: walk.runs,
    words: walk.words.map(tidy),
    parts: walk.parts.flatMap(({ value, grown }) => (grown.box ? [partOf(value, grown.box)] : [])),
  };
}

const tenth = (n: number): number => Math.round(n * 10) / 10;
const tidy = ({ x, y, w, h }: Box): Box => ({ x: tenth(x), y: tenth(y), w: tenth(w), h: tenth(h) });

function partOf(value: DrawnPart, box: Box): DrawnPart {
  const part: DrawnPart = { part: value.part, box: tidy(box) };
  if (value.when && value.when.length > 0) part.when = value.when;
  if (value.shift) part.shift = value.shift;
  return part;
}

/** Which way a half goes: away from the points of the other side. */
function drawApart(walk: Walk): void {
  for (const [id, { context, grown }] of walk.groups) {
    const [, name, side] = /^half-(.+)-([ab])$/.exec(id) ?? [];
    const { shift } = context;
    if (!name || !shift || shift.dx !== 0 || shift.dy !== 0 || !grown.box) continue;
    const other = walk.groups.get(`half-${name}-${side === 'a' ? 'b' : 'a'}`);
    if (other && isDrawnOut(walk, `half-${name}-${side === 'a' ? 'b' : 'a'}`)) continue;
    const own = walk.points.filter((p) => p.shift === shift);
    const around = walk.groups.get(`part-${name}`)?.grown.box;
    const others = walk.points.filter((p) => p.shift !== shift && around && isIn(p, around));
    const mean = (points: { x: number; y: number }[], axis: 'x' | 'y'): number =>
      points.reduce((sum, p) => sum + p[axis], 0) / Math.max(1, points.length);
    const dx = mean(own, 'x') - mean(others, 'x');
    const dy = mean(own, 'y') - mean(others, 'y');
    if (others.length === 0 || own.length === 0) continue;
    if (Math.abs(dx) >= Math.abs(dy)) shift.dx = PARTED * Math.sign(dx);
    else shift.dy = PARTED * Math.sign(dy);
  }
}

const isDrawnOut = (walk: Walk, id: string): boolean => 'data-out' in (findById(walk.root, id)?.attributes ?? {});

const isIn = (p: { x: number; y: number }, b: Box): boolean =>
  p.x >= b.x - 40 && p.x <= b.x + b.w + 40 && p.y >= b.y && p.y <= b.y + b.h;

/** A relay that the drawing shows only plugged leaves a dark socket with its name. */
function emptySockets(walk: Walk): void {
  for (const [id, { grown, context }] of [...walk.groups]) {
    const [, name] = /^relay-(.+)$/.exec(id) ?? [];
    if (!name || !grown.box || walk.groups.has(`pulled-${name}`)) continue;
    const { x, y, w, h } = grown.box;
    const [left, top, wide, high] = [x + 4, y + 4, w - 8, h - 8];
    const svg =
      `<rect x="${left}" y="${top}" width="${wide}" height="${high}" rx="8" fill="{p2}" stroke="{line}" stroke-width="3"/>` +
      `<rect x="${left + 10}" y="${top + 36}" width="${wide - 20}" height="${high - 48}" rx="6" fill="{p3}" stroke="{line}" stroke-width="1.5"/>` +
      `<text x="${x + w / 2}" y="${top + 26}" font-size="20" font-weight="600" fill="{print}" text-anchor="middle">${name}</text>`;
    const when = [
      ...context.when.filter((r) => r.topic !== 'pulled'),
      { topic: 'pulled' as const, id: name, is: true },
    ];
    const at = walk.items.findIndex((item) => item.id === id);
    walk.items.splice(at, 0, { id: `socket-${name}`, role: 'pulled', when, live: false, svg, box: grown.box });
  }
}

function controls(walk: Walk): DrawnControl[] {
  const found: DrawnControl[] = [];
  for (const { control, part, group, kind, margin = 0, values, springs } of walk.rules.controls) {
    const seen = walk.groups.get(group);
    const box = seen?.grown.box;
    if (!seen || !box) continue;
    const { when, shift, motion } = seen.context;
    const wide = { x: box.x - margin, y: box.y - margin, w: box.w + 2 * margin, h: box.h + 2 * margin };
    const rest = walk.rules.initial[control] ?? values[0];
    const drawn: DrawnControl = { control, part, kind, values, rest, box: tidy(wide) };
    if (springs) drawn.springs = springs;
    if (when.length > 0) drawn.when = when;
    if (shift) drawn.shift = shift;
    if (motion) drawn.motion = motion;
    const gate = walk.groups.get(`gate-${part}`)?.grown.box;
    if (gate && kind !== 'push') drawn.reach = tidy(gate);
    found.push(drawn);
  }
  return found;
}

/** Places that can be entered: drawn outlines in the yard, else the box of a zone's group in another place. */
function areas(walk: Walk): Area[] {
  const found: Area[] = [];
  const outline = (element: Element): void => {
    const name = element.attributes.id?.match(/^hit-(.+)$/)?.[1];
    if (name && hasClass(element, 'hit')) {
      const zone = findById(walk.root, `zone-${name}`)?.attributes ?? {};
      const { d } = element.attributes;
      const polygon = (d ? pathPoints(d, 'along') : outlinePoints(element, walk.palette)).map(Math.round);
      const area = areaOf(name, zone, element.attributes['aria-label'] ?? name, polygon);
      found.push(area, ...signOf(walk, name, area));
    }
    for (const child of elements(element)) outline(child);
  };
  outline(walk.root);
  if (found.length > 0) return found;
  for (const [id, { grown }] of walk.groups) {
    const name = id.match(/^zone-(.+)$/)?.[1];
    if (!name || name === walk.id || !grown.box) continue;
    found.push(areaOf(name, findById(walk.root, id)?.attributes ?? {}, name, polygonOf(grown)));
  }
  return found;
}

/** The sign that names a place in the yard, with the words beside it but without its leader line: it is the place too. */
function signOf(walk: Walk, name: string, area: Area): Area[] {
  const callout = findById(walk.root, `callout-${name}`);
  const shown = callout === undefined ? [] : elements(callout).filter((e) => e.tag === 'rect' || e.tag === 'text');
  const corners = shown.flatMap((e) => outlinePoints(e, walk.palette));
  const box = boxOf(corners, undefined, SIGN_MARGIN);
  return box === null ? [] : [{ ...area, polygon: polygonOf({ box }), sign: true }];
}

function polygonOf({ box }: Growing): number[] {
  const b = box && boxOf([box.x, box.y, box.x + box.w, box.y + box.h]);
  return b ? [b.x, b.y, b.x + b.w, b.y, b.x + b.w, b.y + b.h, b.x, b.y + b.h].map(Math.round) : [];
}

function areaOf(name: string, zone: Record<string, string>, label: string, polygon: number[]): Area {
  const zones = (zone['data-zone'] ?? name).split(' ');
  const area: Area = { zone: zones[0], zones, label, polygon };
  if (zone['data-access']) area.access = zone['data-access'];
  return area;
}

/** Walks a drawing and takes it apart: shapes with the rules under which they show, points, parts, groups by id. */
import type { DrawnPart, DrawnPoint, Rule, Shift, Topic } from '../../src/game/drawing.ts';
import { boxOf, multiply, readTransform } from './bounds.ts';
import * as it from './items.ts';
import { add, emit, type Walk } from './items.ts';
import { motionOf, type Rules } from './rules.ts';
import { emitWire, isWire } from './runs.ts';
import { PLAIN, variablesIn } from './style.ts';
import { type Element, elements } from './svg.ts';
import { fuseLinks, lampVariants, rockerVariants, silhouette } from './variants.ts';

const rule = (topic: Topic, id: string, is: boolean, value?: string): Rule =>
  value === undefined ? { topic, id, is } : { topic, id, is, value };

/** Ids that make a group a thing of its own; the rest is written as it stands. */
const OWN =
  /^(pt|part|switch|half|plug|plugged|pulled|relay|fuse|link|mated|unmated|cover|zone|lamp|wheel-chocks|hit|gate)(-|$)/;

function isOwn(element: Element, walk: Walk): boolean {
  const id = element.attributes.id ?? '';
  const { rules } = walk;
  const panels = rules.panels[walk.id] ?? {};
  return (
    OWN.test(id) ||
    element.tag === 'use' ||
    ['hit', 'lit', 'when-out', 'hidden', 'lamp'].some((name) => it.hasClass(element, name)) ||
    element.attributes.display === 'none' ||
    [rules.motions, rules.rockers, rules.shown, rules.needles, panels].some((table) => id in table) ||
    rules.screens.includes(id) ||
    rules.controls.some((c) => c.group === id) ||
    Object.values(panels).some((p) => id.startsWith(p.screws)) ||
    Object.values(rules.opened[walk.id] ?? {}).some((ids) => ids.includes(id))
  );
}

export function visit(element: Element, context: it.Context, walk: Walk): void {
  const id = element.attributes.id ?? '';
  const isDropped = walk.rules.dropped.some((prefix) => id.startsWith(prefix));
  if (isDropped || ['title', 'desc'].includes(element.tag) || it.hasClass(element, 'hit')) return;
  const isPlain = !isOwn(element, walk) && !it.someInside(element, (e) => isOwn(e, walk) || isWire(e));
  if (element.tag === 'use') silhouette(element, context, walk);
  else if (it.hasClass(element, 'lamp')) lampVariants(element, context, walk);
  else if (id in walk.rules.rockers) rockerVariants(element, inside(element, context, walk), walk);
  else if (isPlain && isWire(element)) emitWire(element, context, walk);
  else if (isPlain) emit(element, context, walk);
  else visitInside(element, inside(element, context, walk), walk);
}

function visitInside(element: Element, within: it.Context, walk: Walk): void {
  if ((element.attributes.id ?? '').startsWith('fuse-')) {
    fuseLinks(element, within, walk, visit);
    return;
  }
  if (element.attributes['data-point']) takePoint(element, within, walk);
  if (element.tag === 'g' || element.tag === 'svg') for (const child of elements(element)) visit(child, within, walk);
  else emit(element, within, walk);
}

/** The context inside a group: what its id and its data say, on top of what is around it. */
export function inside(element: Element, context: it.Context, walk: Walk): it.Context {
  const { attributes } = element;
  const id = attributes.id ?? '';
  const next: it.Context = { ...context, variables: variablesIn(element, context.variables) };
  if (attributes['data-conn']) next.conn = attributes['data-conn'];
  const motion = motionOf(id, walk.rules, context.matrix);
  if (motion) Object.assign(next, { motion, live: true, id, role: id in walk.rules.needles ? 'needle' : 'switch' });
  const look = element.tag === 'g' ? it.wrapOf(element, next, walk.palette) : {};
  if (motion) delete look.transform;
  if (Object.keys(look).length > 0) next.wraps = [...context.wraps, look];
  if (element.tag === 'g' && attributes.transform && !motion) {
    next.matrix = multiply(context.matrix, readTransform(attributes.transform));
  }
  const grown: it.Growing = { box: null };
  if (id !== '') {
    next.growing = [...context.growing, grown];
    walk.groups.set(id, { grown, context: next });
  }
  byId(id, element, next, walk);
  byTables(id, next, walk);
  const part = /^(?:part|switch)-(.+)$/.exec(id);
  if (part && !motion) {
    const value: DrawnPart = { part: part[1], box: { x: 0, y: 0, w: 0, h: 0 }, when: next.when };
    if (next.shift) value.shift = next.shift;
    walk.parts.push({ value, grown });
  }
  return next;
}

function byId(id: string, element: Element, next: it.Context, walk: Walk): void {
  const also = (r: Rule, role: it.Context['role'], part?: string): void => {
    Object.assign(next, { when: [...next.when, r], role, id, part: part ?? next.part });
  };
  const [, kind, name] = /^(pulled|plugged|relay|fuse|mated|unmated|cover|half|plug)-([^-]+)/.exec(id) ?? [];
  const access = element.attributes['data-access'];
  if (kind === 'cover') also(rule('opened', access ?? '', false), 'cover');
  else if (kind === 'pulled') also(rule('pulled', name, true), 'pulled');
  else if (kind === 'plugged') also(rule('pulled', name, false), 'base');
  else if (kind === 'relay' || kind === 'fuse') also(rule('pulled', name, false), 'plugged', name);
  else if (kind === 'mated') also(rule('parted', name, false), 'mated');
  else if (kind === 'unmated') also(rule('parted', name, true), 'parted');
  else if (kind === 'half' && !element.attributes['data-out']) {
    Object.assign(next, { id, role: 'half', shift: { topic: 'parted', id: name, dx: 0, dy: 0 } });
  } else if (kind === 'half' || kind === 'plug')
    Object.assign(next, { id, role: 'half', shift: pluggedOut(name, element) });
  if (id === 'wheel-chocks') also(rule('chocks', '', true), 'chocks');
  if (it.hasClass(element, 'when-out')) also(rule('parted', next.conn ?? '', true), next.role);
  if (id.startsWith('pulled-') || id.startsWith('relay-'))
    walk.groups.set(id, { grown: next.growing[next.growing.length - 1], context: next });
}

function pluggedOut(name: string, element: Element): Shift {
  const [, , , , dx, dy] = readTransform(element.attributes['data-out']);
  return { topic: 'parted', id: name, dx, dy };
}

function byTables(id: string, next: it.Context, walk: Walk): void {
  const { rules } = walk;
  const shown = rules.shown[id];
  if (shown) next.when = [...next.when, rule('control', shown.control, true, shown.value)];
  if (rules.screens.includes(id)) Object.assign(next, { id, role: 'screen', live: true });
  for (const [access, ids] of Object.entries(rules.opened[walk.id] ?? {})) {
    if (ids.includes(id)) next.when = [...next.when, rule('opened', access, true)];
  }
  for (const [group, panel] of Object.entries(rules.panels[walk.id] ?? {})) {
    if (id.startsWith(panel.screws)) next.when = [...next.when, rule('opened', panel.access, false)];
    if (id !== group) continue;
    const [x, y, w, h] = panel.hole;
    const hole = { ...next, id: 'hole', when: [...next.when, rule('opened', panel.access, true)] };
    const svg = `<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="12" fill="{u3}" stroke="{line}" stroke-width="3"/>`;
    add(svg, { x, y, w, h }, hole, walk);
    next.shift = { topic: 'opened', id: panel.access, dx: panel.dx, dy: panel.dy };
  }
}

function takePoint(element: Element, context: it.Context, walk: Walk): void {
  const { attributes } = element;
  const point = attributes['data-point'];
  const reach = attributes['data-reach'];
  const when = context.when.filter((r) => !(r.topic === 'pulled' && context.role === 'plugged'));
  const conn = reach === 'unplugged' ? point.split('.')[0] : reach?.endsWith(':out') ? reach.slice(0, -4) : undefined;
  if (conn && !when.some((r) => r.topic === 'parted')) when.push(rule('parted', conn, true));
  for (const hit of elements(element).filter((e) => it.hasClass(e, 'hit'))) {
    const box = boxOf(it.outlinePoints(hit, walk.palette), context.matrix);
    if (!box) continue;
    const drawn: DrawnPoint = { point, x: box.x + box.w / 2, y: box.y + box.h / 2, r: Math.min(box.w, box.h) / 2 };
    if (attributes['data-also']) drawn.also = attributes['data-also'];
    if (attributes['aria-label']) drawn.label = attributes['aria-label'];
    if (reach) drawn.reach = reach;
    if (when.length > 0) drawn.when = when;
    if (context.shift) drawn.shift = context.shift;
    walk.points.push(drawn);
  }
}

export const startWalk = (id: string, root: Element, rules: Rules, palette: it.Palette): Walk => ({
  id,
  root,
  rules,
  palette,
  items: [],
  points: [],
  parts: [],
  groups: new Map(),
  runs: [],
  words: [],
});

export const TOP_CONTEXT: it.Context = { ...it.TOP, variables: PLAIN };

/** Pieces that are drawn in one state and needed in several: rockers, lamps, fuse links, silhouettes for the slate. */
import type { Rule } from '../../src/game/drawing.ts';
import * as it from './items.ts';
import { add, emit, type Walk } from './items.ts';
import { presentation } from './style.ts';
import { type Element, elements, findById } from './svg.ts';

/** Both ways of a rocker: the lit face above and the shade below change places across the hinge. */
export function rockerVariants(element: Element, context: it.Context, walk: Walk): void {
  const { control, values } = walk.rules.rockers[element.attributes.id];
  const box = it.measure(element, context.matrix, context.variables, walk.palette);
  if (!box) return;
  const isFace = (e: Element): boolean => it.hasClass(e, 'n') && (it.hasClass(e, 'p1') || it.hasClass(e, 'p3'));
  const frame = elements(element)[0];
  const hinge = Number(frame.attributes.y) + Number(frame.attributes.height) / 2;
  const piece = (e: Element): string => it.write(e, context.variables, walk.palette);
  values.forEach((value, i) => {
    const isFirst = i === 0;
    const isLast = i === values.length - 1;
    const svg = elements(element).map((e) => {
      if (!isFace(e) || isFirst) return piece(e);
      const turned = `<g transform="matrix(1 0 0 -1 0 ${2 * hinge})">${piece(e)}</g>`;
      if (isLast) return turned;
      return it.hasClass(e, 'p3') ? piece(e) + turned : '';
    });
    const rule: Rule = { topic: 'control', id: control, is: true, value };
    const when = [...context.when, rule];
    add(
      svg.join(''),
      box,
      { ...context, id: `${element.attributes.id}:${value}`, role: 'switch', live: true, when },
      walk,
    );
  });
}

/** A lamp stands in the drawing unlit; lit, it lies over that as a piece of its own. */
export function lampVariants(element: Element, context: it.Context, walk: Walk): void {
  const name = element.attributes['data-lamp'] ?? '';
  const box = it.measure(element, context.matrix, context.variables, walk.palette);
  if (!box) return;
  const colour = walk.rules.lamps[name];
  const whole = it.write(element, context.variables, walk.palette);
  const isGlass = whole.includes('{lampoff}') || (colour !== undefined && whole.includes(`{${colour}}`));
  const lit = colour
    ? whole.replaceAll('{lampoff}', `{${colour}}`).replaceAll('#8d979d', isGlass ? '{line}' : `{${colour}}`)
    : whole;
  const dark = colour
    ? whole
        .replaceAll(`{${colour}}`, '{lampoff}')
        .replaceAll('stroke="{line}" stroke-width="1.9"', 'stroke="#8d979d" stroke-width="1.9"')
    : it.write(withoutLit(element), context.variables, walk.palette);
  add(dark, box, context, walk);
  const when: Rule[] = [...context.when, { topic: 'lamp', id: name, is: true }];
  add(lit, box, { ...context, id: element.attributes.id, role: 'lamp', live: true, when }, walk);
}

const withoutLit = (element: Element): Element => ({
  ...element,
  children: elements(element).filter((e) => !it.hasClass(e, 'lit')),
});

/**
 * A fuse. In its socket the link can't be judged, so it is drawn only on the cloth: whole or burnt through. A blade
 * fuse leaves two open slots.
 */
type Visit = (element: Element, context: it.Context, walk: Walk) => void;
export function fuseLinks(element: Element, context: it.Context, walk: Walk, visit: Visit): void {
  const name = context.part ?? '';
  const blades = elements(element).some((e) => e.attributes['data-point']);
  const box = it.measure(element, context.matrix, context.variables, walk.palette);
  for (const child of elements(element)) {
    const id = child.attributes.id ?? '';
    const isLink =
      id.startsWith('link-') || /stroke:var\(--line\);stroke-width:2\.2\b/.test(child.attributes.style ?? '');
    if (!isLink) {
      visit(child, context, walk);
      continue;
    }
    const when = context.when.filter((r) => r.topic !== 'pulled');
    const link = { ...context, role: 'link' as const, part: name };
    const linkBox = it.measure(child, context.matrix, context.variables, walk.palette);
    if (!linkBox) continue;
    const whole: Rule = { topic: 'blown', id: name, is: false };
    emit(child, { ...link, id: `link-${name}`, when: [...when, whole] }, walk);
    const burnt = burntLink(linkBox, linkBox.h > linkBox.w, blades ? 2.2 : 4.6);
    add(burnt, linkBox, { ...link, id: `burnt-${name}`, when: [...when, { ...whole, is: true }] }, walk);
  }
  if (!blades || !box) return;
  const slots = walk.points.filter((p) => p.point.startsWith(`${name}.`));
  const open = slots.map(
    ({ x }) =>
      `<rect x="${x - 5}" y="${box.y + 6}" width="10" height="${box.h - 14}" rx="2" fill="{u3}" stroke="{line}" stroke-width="0.9"/>` +
      `<rect x="${x - 2}" y="${box.y + 9}" width="4" height="${box.h - 20}" fill="{c2}"/>`,
  );
  const when: Rule[] = [...context.when.filter((r) => r.topic !== 'pulled'), { topic: 'pulled', id: name, is: true }];
  add(open.join(''), box, { ...context, id: `slots-${name}`, role: 'pulled', part: undefined, when }, walk);
}

function burntLink(
  { x, y, w, h }: { x: number; y: number; w: number; h: number },
  isUpright: boolean,
  width: number,
): string {
  const [cx, cy] = [x + w / 2, y + h / 2];
  const stub = isUpright
    ? `M${cx} ${y}V${y + h * 0.24}M${cx} ${y + h}V${y + h * 0.78}`
    : `M${x} ${y + h - 2}h${w * 0.26}M${x + w} ${y + h - 2}h${-w * 0.24}`;
  const soot = `<ellipse cx="${cx}" cy="${cy}" rx="${w * (isUpright ? 0.9 : 0.3)}" ry="${h * (isUpright ? 0.3 : 0.5)}" fill="{line}" opacity="0.35"/>`;
  return `${soot}<path d="${stub}" fill="none" stroke="{line}" stroke-width="${width}"/>`;
}

/** The outline of an object again, wider and in the rim's colour, so that it stands off the slate. */
export function silhouette(element: Element, context: it.Context, walk: Walk): void {
  const target = findById(walk.root, (element.attributes.href ?? '').slice(1));
  if (!target) throw new Error(`${walk.id}: ${element.attributes.href} is not in the drawing`);
  const variables = { ...context.variables, line: '{rim}', contour: '7.4' };
  const isChocks = target.attributes.id === 'wheel-chocks';
  const when: Rule[] = [...context.when, { topic: 'dark', id: '', is: true }];
  if (isChocks) when.push({ topic: 'chocks', id: '', is: true });
  const contours = onlyContours(target, variables, walk);
  const box = it.measure(target, context.matrix, context.variables, walk.palette);
  if (box) add(contours, box, { ...context, id: 'silhouette', role: 'silhouette', when }, walk);
}

function onlyContours(element: Element, variables: it.Context['variables'], walk: Walk): string {
  if (element.tag !== 'g') {
    return it.hasClass(element, 'c') ? it.write(element, variables, walk.palette) : '';
  }
  const body = elements(element)
    .map((e) => onlyContours(e, variables, walk))
    .join('');
  const { transform } = presentation(element, variables, walk.palette.tokens);
  return transform && body !== '' ? `<g transform="${transform}">${body}</g>` : body;
}

/**
 * The drawing classes (style sheet, sections 1 and 2) as presentation attributes. Fragments reach the screen as images,
 * where no style sheet and no style attribute may be needed; colours stay `{token}` so that one fragment serves both themes.
 */
import type { Element } from './svg.ts';

/** Values that a group may set for what is inside it. */
export type Variables = Record<string, string>;
export const PLAIN: Variables = { line: '{line}', contour: '3', detail: '1.5', hair: '0.9' };

type Attributes = Record<string, string>;
const outline = (colour: string, width: string): Attributes => ({
  stroke: colour,
  'stroke-width': width,
  'stroke-linejoin': 'round',
  'stroke-linecap': 'round',
});

/** In the order of the style sheet: a later class wins over an earlier one. */
function classRules(v: Variables): [string, Attributes][] {
  return [
    ['c', outline(v.line, v.contour)],
    ['d', outline(v.line, v.detail)],
    ['h', outline(v.line, v.hair)],
    ['n', { stroke: 'none' }],
    ['o', { fill: 'none' }],
    ['ci', outline('{ink}', v.contour)],
    ['di', outline('{ink}', v.detail)],
    ['hi', outline('{ink}', v.hair)],
  ];
}
const LATE: [string, Attributes][] = [
  ['b', { 'font-weight': '600' }],
  ['m', { fill: '{ink2}' }],
  ['onp', { fill: '{print}' }],
  ['online', { fill: '{line}' }],
  ['halo', { 'paint-order': 'stroke', stroke: '{halo}', 'stroke-width': '4', 'stroke-linejoin': 'round' }],
];
const SHAPE = new Set([
  'x',
  'y',
  'width',
  'height',
  'rx',
  'ry',
  'cx',
  'cy',
  'r',
  'd',
  'transform',
  'opacity',
  'font-size',
  'text-anchor',
]);
const PAINT = new Set([
  'fill',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-linejoin',
  'stroke-linecap',
  'stroke-dasharray',
  'paint-order',
  'letter-spacing',
]);

const colour = (value: string, v: Variables): string =>
  value.replace(/var\(--([\w-]+)\)/g, (_, name: string) => v[name] ?? `{${name}}`).replace(/px$/, '');

function declarations(style: string): [string, string][] {
  return style
    .split(';')
    .map((d) => d.split(':'))
    .filter((d) => d.length === 2)
    .map(([name, value]) => [name.trim(), value.trim()]);
}

/** Variables inside an element: its own over those around it. */
export function variablesIn(element: Element, around: Variables): Variables {
  const own = declarations(element.attributes.style ?? '').filter(([name]) => name.startsWith('--'));
  return own.length === 0 ? around : { ...around, ...Object.fromEntries(own.map(([n, value]) => [n.slice(2), value])) };
}

/** An element's own look: attributes, under classes, under its style attribute. Ids, roles and names are left out. */
export function presentation(element: Element, v: Variables, tokens: ReadonlySet<string>): Attributes {
  const look: Attributes = {};
  for (const [name, value] of Object.entries(element.attributes)) {
    if (SHAPE.has(name)) look[name] = value;
    else if (PAINT.has(name)) look[name] = colour(value, v);
  }
  if (element.tag === 'text') Object.assign(look, { fill: '{ink}' });
  const classes = new Set((element.attributes.class ?? '').split(/\s+/).filter((c) => c !== ''));
  for (const [name, attributes] of classRules(v)) if (classes.has(name)) Object.assign(look, attributes);
  for (const name of classes)
    if (tokens.has(name) && name !== 'halo') look.fill = name === 'line' ? v.line : `{${name}}`;
  for (const [name, attributes] of LATE) if (classes.has(name)) Object.assign(look, attributes);
  for (const [name, value] of declarations(element.attributes.style ?? '')) {
    if (PAINT.has(name)) look[name] = colour(value, v);
  }
  if (look.stroke === 'none') for (const name of Object.keys(look)) if (name.startsWith('stroke-')) delete look[name];
  return look;
}

const round = (value: string): string => value.replace(/-?\d+\.\d+/g, (n) => String(Math.round(Number(n) * 100) / 100));

export function writeTag(tag: string, attributes: Attributes, body: string | null): string {
  const written = Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${round(value)}"`)
    .join('');
  return body === null ? `<${tag}${written}/>` : `<${tag}${written}>${body}</${tag}>`;
}

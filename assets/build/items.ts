/** What the walk through a drawing collects, and the helpers that write a shape with its box. */
import type { Box, DrawnPart, DrawnPoint, Motion, Role, Rule, Run, Shift } from '../../src/game/drawing.ts';
import { type Lettering, widthOf } from '../../src/game/lettering.ts';
import { boxOf, type Matrix, multiply, pathPoints, readTransform, union } from './bounds.ts';
import type { Rules } from './rules.ts';
import { PLAIN, presentation, type Variables, variablesIn, writeTag } from './style.ts';
import { type Element, elements, isElement, textOf } from './svg.ts';

export interface Item {
  id: string;
  role: Role;
  part?: string | undefined;
  when: Rule[];
  shift?: Shift | undefined;
  motion?: Motion | undefined;
  live: boolean;
  svg: string;
  box: Box;
}

/** What is around an element: attributes of the groups to be written again, rules, what moves it. */
export interface Context {
  id: string;
  role: Role;
  part?: string | undefined;
  conn?: string | undefined;
  when: Rule[];
  shift?: Shift | undefined;
  motion?: Motion | undefined;
  variables: Variables;
  matrix: Matrix;
  wraps: Record<string, string>[];
  /** Boxes of the groups around, which grow with what is drawn in them. */
  growing: Growing[];
  live: boolean;
}
export interface Growing {
  box: Box | null;
}

export const TOP: Context = {
  id: 'base',
  role: 'base',
  when: [],
  variables: PLAIN,
  matrix: [1, 0, 0, 1, 0, 0],
  wraps: [],
  growing: [],
  live: false,
};

export interface Pending<T> {
  value: T;
  grown: Growing;
}

export interface Collected {
  items: Item[];
  points: DrawnPoint[];
  parts: Pending<DrawnPart>[];
  groups: Map<string, { grown: Growing; context: Context }>;
  runs: Run[];
  words: Box[];
}

export interface Walk extends Collected {
  id: string;
  root: Element;
  rules: Rules;
  palette: Palette;
}

export interface Palette {
  tokens: ReadonlySet<string>;
  lettering: Lettering;
}

const GROUP_LOOK = [
  'transform',
  'opacity',
  'fill',
  'stroke',
  'stroke-width',
  'stroke-linejoin',
  'stroke-linecap',
  'fill-rule',
];

/** A group's attributes that what is inside must be wrapped in again when it is written apart. */
export function wrapOf(element: Element, context: Context, palette: Palette): Record<string, string> {
  const look = presentation(element, context.variables, palette.tokens);
  return Object.fromEntries(Object.entries(look).filter(([name]) => GROUP_LOOK.includes(name)));
}

/** An element and all inside it as a fragment; ids, names and what only serves picking are left out. */
export function write(element: Element, around: Variables, palette: Palette): string {
  if (isUnseen(element)) return '';
  const variables = variablesIn(element, around);
  const look = presentation(element, variables, palette.tokens);
  if (element.tag === 'text') return writeTag('text', look, textOf(element));
  if (element.tag !== 'g') return writeTag(element.tag, look, null);
  const body = elements(element)
    .map((child) => write(child, variables, palette))
    .join('');
  return Object.keys(look).length === 0 ? body : writeTag('g', look, body);
}

export const isUnseen = (element: Element): boolean =>
  ['title', 'desc', 'style', 'use'].includes(element.tag) ||
  (element.attributes.class ?? '').split(' ').includes('hit');

export function measure(element: Element, matrix: Matrix, around: Variables, palette: Palette): Box | null {
  const variables = variablesIn(element, around);
  const m = element.attributes.transform ? multiply(matrix, readTransform(element.attributes.transform)) : matrix;
  if (element.tag === 'g') {
    return elements(element).reduce<Box | null>(
      (box, child) => (isUnseen(child) ? box : union(box, measure(child, m, variables, palette))),
      null,
    );
  }
  const look = presentation(element, variables, palette.tokens);
  const margin = look.stroke === undefined ? 1 : Number(look['stroke-width'] ?? 1) / 2 + 0.5;
  return boxOf(outlinePoints(element, palette), m, margin);
}

/** Corners of a shape, before its transform. */
export function outlinePoints(element: Element, palette: Palette): number[] {
  const n = (name: string): number => Number(element.attributes[name] ?? 0);
  switch (element.tag) {
    case 'path':
      return pathPoints(element.attributes.d ?? '');
    case 'rect':
      return corners(n('x'), n('y'), n('width'), n('height'));
    case 'circle':
      return corners(n('cx') - n('r'), n('cy') - n('r'), 2 * n('r'), 2 * n('r'));
    case 'ellipse':
      return corners(n('cx') - n('rx'), n('cy') - n('ry'), 2 * n('rx'), 2 * n('ry'));
    case 'text': {
      const isBold = (element.attributes.class ?? '').split(' ').includes('b');
      const size = n('font-size');
      const width = widthOf(textOf(element), palette.lettering[isBold ? 600 : 500], size);
      const anchor = element.attributes['text-anchor'];
      const left = n('x') - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
      return corners(left, n('y') - 0.8 * size, width, size);
    }
    default:
      throw new Error(`<${element.tag}> is not used in the drawings`);
  }
}

const corners = (x: number, y: number, w: number, h: number): number[] => [x, y, x + w, y, x + w, y + h, x, y + h];

export const hasClass = (element: Element, name: string): boolean =>
  (element.attributes.class ?? '').split(/\s+/).includes(name);

export const someInside = (element: Element, test: (e: Element) => boolean): boolean =>
  element.children.some((c) => isElement(c) && (test(c) || someInside(c, test)));

/** Adds a fragment to the items and lets the groups around it grow. */
export function emit(element: Element, context: Context, walk: Walk): void {
  const svg = write(element, context.variables, walk.palette);
  const box = measure(element, context.matrix, context.variables, walk.palette);
  if (svg !== '' && box) add(svg, box, context, walk);
  noteWords(element, context.matrix, walk);
}

function noteWords(element: Element, matrix: Matrix, walk: Walk): void {
  if (isUnseen(element)) return;
  const m = element.attributes.transform ? multiply(matrix, readTransform(element.attributes.transform)) : matrix;
  if (element.tag === 'g') for (const child of elements(element)) noteWords(child, m, walk);
  const box = element.tag === 'text' ? boxOf(outlinePoints(element, walk.palette), m) : null;
  if (box) walk.words.push(box);
}

export function add(svg: string, box: Box, context: Context, walk: Walk): void {
  for (const growing of context.growing) growing.box = union(growing.box, box);
  const wrapped = context.wraps.reduceRight((body, wrap) => {
    const attributes = Object.entries(wrap).map(([name, value]) => ` ${name}="${value}"`);
    return `<g${attributes.join('')}>${body}</g>`;
  }, svg);
  const { id, role, part, when, shift, motion, live } = context;
  walk.items.push({ id, role, part, when, shift, motion, live, svg: wrapped, box });
}

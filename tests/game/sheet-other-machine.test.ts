/** A second machine gets its sheet from its book and a few lines of layout, whatever its numbering. */
import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { laySheet, type SheetBook, sheetToSvg } from '../../src/game/sheet/index.ts';
import type { WireSpec } from '../../src/machine/index.ts';
import { sheetSchema } from '../../src/scenario/schema-sheet.ts';

const common = { zone: 'Z', access: 'A0', price: 1, replaceMinutes: 1, replaceable: true, failures: [] };
const wire = (id: string, number: string, colour: string, mm2: number, from: string, to: string): WireSpec => ({
  ...{ id, number, colour, mm2, from, to },
  ...{ metres: 1, harness: 'H', ohms: 0.01, ampacityAmps: 10, prior: 1, failures: [] },
});

const book: SheetBook = {
  name: 'Bench 1',
  parts: [
    {
      ...common,
      ...{ id: 'B', name: 'Bus', kind: 'general', symbol: 'busbar', terminals: ['IN'] },
      elements: [{ id: 'tab', a: 'B.IN', b: 'Q1.a', law: { kind: 'resistance', ohms: 1e-4 } }],
    },
    {
      ...common,
      id: 'Q1',
      name: 'Fuse',
      kind: 'fuse',
      terminals: ['a', 'b'],
      ratingAmps: 10,
      type: 'blade',
      ohms: 0.01,
    },
    {
      ...common,
      ...{ id: 'T', name: 'Switch', kind: 'switch', terminals: ['1', '2'] },
      elements: [
        { id: 'on', a: 'T.1', b: 'T.2', law: { kind: 'contact', ohms: 0.01 }, when: { control: 't', is: ['on'] } },
      ],
    },
    {
      ...common,
      ...{ id: 'L1', name: 'Lamp', kind: 'general', symbol: 'lamp', terminals: ['x', 'y'] },
      elements: [{ id: 'fil', a: 'L1.x', b: 'L1.y', law: { kind: 'resistance', ohms: 3, coldOhms: 0.3 } }],
    },
    {
      ...common,
      ...{ id: 'E', name: 'Earth', kind: 'general', symbol: 'ground', terminals: ['L', 'M'], hidden: ['M'] },
      elements: [{ id: 'stud', a: 'E.L', b: 'E.M', law: { kind: 'resistance', ohms: 1e-4 } }],
    },
  ],
  wires: [
    wire('7a', '7', 'OG', 1.5, 'Q1.b', 'T.1'),
    wire('8a', '8', 'GN', 1.5, 'T.2', 'J.3.a'),
    wire('8b', '8', 'GN', 1.5, 'J.3.b', 'L1.x'),
    wire('9a', '9', 'WH', 2.5, 'L1.y', 'E.L'),
  ],
  connectors: [
    {
      ...{ id: 'J', name: 'Joint', zone: 'Z', access: 'A0', kind: 'inline', harnessA: 'H', b: ['H2'], cavities: 4 },
      ...{ sealed: false, failures: [], backProbeText: '' },
      pins: [{ pin: '3', number: '8', a: '8a', b: '8b', ohms: 0.003, backProbe: true }],
    },
  ],
  splices: [],
};
const spec = z.parse(sheetSchema, {
  ...{ id: 'lamp', number: 1, title: 'Lamp', rest: { t: 'on' } },
  rails: [
    { point: 'B.IN', name: '30', kind: 'feed' },
    { point: 'E.L', name: '31', kind: 'ground' },
  ],
  tracks: [{ title: 'Lamp', paths: [{ from: 'B.IN', to: 'E.L' }] }],
});

test('finds the way from feed to ground and draws it in order', () => {
  const { drawing, labels } = laySheet(book, spec);
  const height = new Map(drawing.points.map((p) => [p.point, p.y]));
  const order = ['B.IN', 'Q1.a', 'Q1.b', 'T.1', 'T.2', 'J.3.a', 'J.3.b', 'L1.x', 'L1.y', 'E.L'];
  expect([...height.keys()].sort()).toEqual([...order].sort());
  order.slice(1).forEach((point, i) => {
    expect(height.get(point), point).toBeGreaterThan(height.get(order[i]) ?? 0);
  });
  expect(labels.filter((label) => label.clash)).toEqual([]);
});

test('says what the book lacks', () => {
  const lost = { ...spec, tracks: [{ title: 'x', paths: [{ from: 'B.IN', to: 'Z9.1', via: [], dx: 0 }] }] };
  expect(() => laySheet(book, lost)).toThrow('the book has no point Z9.1');
  const apart = {
    ...spec,
    tracks: [{ title: 'x', paths: [{ from: 'L1.x', to: 'E.M', via: ['B.IN', 'Q1.b'], dx: 0 }] }],
  };
  expect(() => laySheet(book, apart)).toThrow('no way');
});

test('puts the colors in for looking at it', () => {
  const svg = sheetToSvg(laySheet(book, spec).drawing, { paper: '#fff', ink: '#000', 'w-OG': '#f80' });
  expect(svg).toContain('stroke="#f80"');
  expect(svg).not.toContain('{');
});

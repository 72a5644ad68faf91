import { describe, expect, it } from 'vitest';
import type { Drawing, DrawnControl } from '../../src/game/drawing.ts';
import { valueAt } from '../../src/game/handle.ts';
import { type Lettering, lettered } from '../../src/game/lettering.ts';
import { isInside, pick } from '../../src/game/pick.ts';
import { regionOf, svgDocument } from '../../src/game/raster.ts';
import type { StageView } from '../../src/game/view.ts';
import { fitting, held, zoomAt } from '../../src/game/viewport.ts';
import { isShown, poseOf, spots } from '../../src/game/visible.ts';
import { bareView } from '../support/stage-view.ts';

const view = bareView('P');

const key: DrawnControl = {
  control: 'key',
  part: 'S2',
  kind: 'turn',
  values: ['off', 'acc', 'run', 'start'],
  rest: 'off',
  springs: { start: 'run' },
  box: { x: 50, y: 50, w: 100, h: 100 },
  motion: {
    control: 'key',
    pivot: { x: 100, y: 100 },
    poses: { off: { turn: -70 }, acc: { turn: -25 }, run: { turn: 25 }, start: { turn: 70 } },
  },
};

const drawing: Drawing = {
  id: 'P',
  width: 400,
  height: 300,
  title: '',
  layers: [
    { id: 'base', role: 'base', tier: 0, svg: '', box: { x: 0, y: 0, w: 400, h: 300 } },
    {
      id: 'cover-P',
      role: 'cover',
      tier: 0,
      svg: '',
      box: { x: 200, y: 0, w: 200, h: 300 },
      when: [{ topic: 'opened', id: 'AC9', is: false }],
    },
  ],
  points: [
    { point: 'A.1', x: 20, y: 20, r: 8 },
    { point: 'A.2', x: 46, y: 20, r: 8 },
    { point: 'B.1', x: 300, y: 100, r: 8 },
    { point: 'X1.1.a', x: 20, y: 200, r: 8, shift: { topic: 'parted', id: 'X1', dx: 40, dy: 0 } },
    { point: 'X1.1.b', x: 20, y: 240, r: 8, when: [{ topic: 'parted', id: 'X1', is: true }] },
  ],
  areas: [{ zone: 'Z', zones: ['Z'], label: 'Z', polygon: [100, 200, 180, 200, 140, 280] }],
  controls: [key],
  parts: [{ part: 'K1', box: { x: 0, y: 0, w: 80, h: 60 } }],
};

const at = (x: number, y: number, change: Partial<StageView> = {}, unit = 1) => {
  const now = { ...view, ...change };
  return pick({ drawing, view: now, found: spots(drawing, now), x, y, unit });
};

describe('picking', () => {
  it('takes the nearest point within 22 pixels of the screen, not units', () => {
    expect(at(32, 20)).toMatchObject({ kind: 'point', spot: { point: { point: 'A.1' } } });
    expect(at(34, 20)).toMatchObject({ kind: 'point', spot: { point: { point: 'A.2' } } });
    expect(at(20, 45)).toMatchObject({ kind: 'part', part: 'K1' });
    expect(at(20, 45, {}, 2)).toMatchObject({ kind: 'point' });
  });
  it('finds nothing under a cover, and names the place that the cover closes', () => {
    expect(at(300, 100)).toMatchObject({ kind: 'zone', zone: 'P' });
    expect(at(300, 100, { opened: ['AC9'] })).toMatchObject({ kind: 'point', spot: { point: { point: 'B.1' } } });
  });
  it('follows the half of a plug and offers the other side only when parted', () => {
    expect(at(20, 240)).toBeNull();
    expect(at(60, 200, { unplugged: ['X1'] })).toMatchObject({ kind: 'point', spot: { x: 60 } });
    expect(at(20, 240, { unplugged: ['X1'] })).toMatchObject({ kind: 'point' });
  });
  it('shows a sealed pin as such, and as a point once its plug is parted', () => {
    const [sealed] = drawing.points.slice(-1).map((point) => ({ ...point, reach: 'unplugged' }));
    const kept = { ...drawing, points: [...drawing.points.slice(0, -1), sealed] };
    const look = (change: Partial<StageView>, x: number) => {
      const now = { ...view, ...change };
      return pick({ drawing: kept, view: now, found: spots(kept, now), x, y: 240, unit: 1 });
    };
    expect(look({}, 20)).toMatchObject({ kind: 'point', sealed: true, spot: { point: { point: 'X1.1.b' } } });
    expect(look({}, 40)).toBeNull();
    expect(look({ unplugged: ['X1'] }, 20)).not.toHaveProperty('sealed');
  });
  it('takes the nearest point further off for a lead in hand, but no neighbour of a sealed pin', () => {
    expect(at(20, 52, { leadInHand: 'red' })).toMatchObject({ kind: 'point', spot: { point: { point: 'A.1' } } });
    expect(at(20, 52)).toMatchObject({ kind: 'part', part: 'K1' });
    expect(at(20, 70, { leadInHand: 'red' })).toBeNull();
    const [sealed] = drawing.points.slice(-1).map((point) => ({ ...point, reach: 'unplugged' }));
    const kept = { ...drawing, points: [...drawing.points.slice(0, -1), sealed] };
    const now = { ...view, leadInHand: 'black' as const };
    const picked = pick({ drawing: kept, view: now, found: spots(kept, now), x: 20, y: 232, unit: 1 });
    expect(picked).toMatchObject({ sealed: true, spot: { point: { point: 'X1.1.b' } } });
  });
  it('takes the sign of a place for the place, and lights up the place itself', () => {
    const [area] = drawing.areas;
    const sign = { ...area, polygon: [300, 250, 380, 250, 380, 290, 300, 290], sign: true as const };
    const signed = { ...drawing, areas: [area, sign] };
    const now = { ...view, opened: ['AC9'] };
    const picked = pick({ drawing: signed, view: now, found: spots(signed, now), x: 340, y: 270, unit: 1 });
    expect(picked).toEqual({ kind: 'zone', zone: 'Z', polygon: area.polygon });
  });
  it('finds handles and places to enter', () => {
    expect(at(100, 100)).toMatchObject({ kind: 'control', control: { control: 'key' } });
    expect(at(140, 220)).toMatchObject({ kind: 'zone', zone: 'Z' });
    expect(isInside([0, 0, 10, 0, 10, 10, 0, 10], 11, 5)).toBe(false);
  });
});

describe('handles', () => {
  it('turn to the label that is touched, and step when held by themselves', () => {
    expect(valueAt(key, 'off', 140, 80)).toBe('start');
    expect(valueAt(key, 'start', 55, 90)).toBe('off');
    expect(valueAt(key, 'acc', 110, 100)).toBe('run');
    expect(valueAt(key, 'run', 90, 100)).toBe('acc');
    // At its stop it goes the only way that it can.
    expect(valueAt(key, 'off', 90, 100)).toBe('acc');
    expect(valueAt(key, 'start', 110, 100)).toBeNull();
  });
  it('toggle between two values', () => {
    const { springs: _, ...plain } = key;
    const rocker: DrawnControl = { ...plain, kind: 'rock', values: ['0', '1'] };
    expect(valueAt(rocker, '0', 60, 60)).toBe('1');
    expect(valueAt(rocker, '1', 60, 60)).toBe('0');
  });
  it('stand in the pose of their value, a gauge anywhere between', () => {
    const { motion } = key;
    if (!motion) throw new Error('no motion');
    expect(poseOf(motion, { ...view, controls: { key: 'run' } }).turn).toBe(25);
    const gauge = { control: 'fuel', poses: { '0': { turn: 150 }, '1': { turn: 390 } } };
    expect(poseOf(gauge, { ...view, readouts: { fuel: 0.5 } }).turn).toBe(270);
  });
});

describe('viewport', () => {
  const box = { x: 0, y: 0, w: 1600, h: 900 };
  it('fits on whole pixels and keeps the pixel under the pointer when zooming', () => {
    const start = fitting(box, { w: 1366, h: 768 }, 10);
    expect(start.scale).toBeCloseTo(0.8311, 3);
    expect(Number.isInteger(start.x) && Number.isInteger(start.y)).toBe(true);
    const unit = (400 - start.x) / start.scale;
    const closer = zoomAt(start, 2, 400, 300, start.scale, 1);
    expect((400 - closer.x) / closer.scale).toBeCloseTo(unit, 9);
    expect(zoomAt(start, 0.1, 0, 0, start.scale, 1).scale).toBe(start.scale);
    expect(zoomAt(start, 1000, 0, 0, start.scale, 2).scale).toBe(10);
  });
  it('never loses the drawing', () => {
    const lost = held({ scale: 3, x: 9000, y: -9000 }, box, { w: 1000, h: 700 });
    expect(lost.x).toBe(250);
    expect(lost.y + 3 * 900).toBe(525);
  });
});

describe('painting', () => {
  it('cuts a region on the grid of pixels', () => {
    expect(regionOf({ x: 10.2, y: 20.2, w: 5, h: 5 }, 2)).toEqual({
      scale: 2,
      left: 20,
      top: 40,
      width: 11,
      height: 11,
    });
    const svg = svgDocument(
      [{ svg: '<a/>' }, { svg: '<b/>', transform: 'translate(1 2)' }],
      regionOf({ x: 0, y: 0, w: 4, h: 2 }, 2),
    );
    expect(svg).toContain('viewBox="0 0 4 2" width="8" height="4"><a/><g transform="translate(1 2)"><b/></g>');
  });
  it('sets words as outlines from their anchor, a halo below the letters', () => {
    const face = { A: [500, 'M0 0L500 -700Z'], '?': [100, ''] } as Lettering[500];
    const lettering: Lettering = { 500: face, 600: face };
    const svg = '<text x="100" y="50" font-size="20" text-anchor="end" letter-spacing="0" fill="{ink}">AA</text>';
    expect(lettered(svg, lettering)).toBe('<path fill="{ink}" d="M80 50L90 36ZM90 50L100 36Z"/>');
    const halo = '<text x="0" y="0" paint-order="stroke" stroke="{halo}" stroke-width="4" fill="{ink}">A</text>';
    expect(lettered(halo, lettering).match(/<path/g)).toHaveLength(2);
  });
  it('shows a layer only while all its rules hold', () => {
    const when = [
      { topic: 'opened' as const, id: 'AC1', is: true },
      { topic: 'control' as const, id: 'wlf', is: true, value: '1' },
    ];
    expect(isShown({ when }, { ...view, opened: ['AC1'] })).toBe(false);
    expect(isShown({ when }, { ...view, opened: ['AC1'], controls: { wlf: '1' } })).toBe(true);
  });
});

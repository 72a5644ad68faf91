import { describe, expect, it } from 'vitest';
import { compareWithBook } from '../../assets/build/check.ts';
import { BOOK, buildDrawings, SOURCES } from '../../assets/build/drawings.ts';
import { readRules } from '../../assets/build/rules.ts';

const drawings = buildDrawings();
const named = (id: string) => {
  const drawing = drawings.find((d) => d.id === id);
  if (!drawing) throw new Error(`no ${id}`);
  return drawing;
};
const svgOf = (id: string): string =>
  named(id)
    .layers.map((l) => l.svg)
    .join('');

describe('built drawings', () => {
  it.each(drawings.map((d) => d.id))(
    '%s needs no style, class or id, and all its colours are tokens or fixed',
    (id) => {
      expect(svgOf(id)).not.toMatch(/<style|<use|\sstyle=|\sclass=|\sid=|var\(/);
      expect(svgOf(id)).not.toMatch(/NaN|undefined/);
    },
  );

  it.each(drawings.map((d) => d.id))('%s keeps its layers inside its edges', (id) => {
    const { width, height, layers } = named(id);
    for (const { box } of layers) {
      expect(box.x + box.w).toBeGreaterThan(0);
      expect(box.y + box.h).toBeGreaterThan(0);
      expect(box.x).toBeLessThan(width);
      expect(box.y).toBeLessThan(height);
      expect(box.w).toBeGreaterThan(0);
    }
  });

  it('splits still layers only where something moves between them', () => {
    for (const { id, layers } of drawings) expect(Math.max(...layers.map((l) => l.tier)), id).toBeLessThan(4);
    expect(new Set(named('ENGL').layers.map((l) => l.tier)).size).toBe(1);
  });

  it('keeps every pair of points apart unless they are one metal in two states', () => {
    for (const { id, points } of drawings) {
      points.forEach((a, i) => {
        for (const b of points.slice(i + 1)) {
          if (JSON.stringify(a.when) !== JSON.stringify(b.when)) continue;
          expect(Math.hypot(a.x - b.x, a.y - b.y), `${id}: ${a.point} and ${b.point}`).toBeGreaterThan(14);
        }
      });
    }
  });

  it('has both sides of a rocker, a lit lamp over an unlit one and the pivot of a key', () => {
    const dash = named('CDASH');
    expect(dash.layers.filter((l) => l.id.startsWith('rocker-S20'))).toHaveLength(3);
    expect(dash.layers.find((l) => l.id === 'lamp-CHG')?.svg).toContain('{lampred}');
    expect(dash.layers.find((l) => l.role === 'base')?.svg).not.toContain('{lampred}');
    const key = dash.layers.find((l) => l.motion?.control === 'key');
    expect(key?.motion?.pivot).toEqual({ x: 922, y: 664 });
    expect(key?.motion?.poses.start).toEqual({ turn: 70 });
  });

  it('moves a knob on the larger panel about its own middle', () => {
    const pivot = named('BDASH').layers.find((l) => l.id === 'knob-S26')?.motion?.pivot;
    const box = named('BDASH').controls.find((c) => c.control === 'wiper')?.box;
    expect(pivot && box && Math.abs(pivot.x - (box.x + box.w / 2))).toBeLessThan(12);
  });

  it('draws halves of a plug apart, away from each other', () => {
    const shift = (point: string) => named('BDASH').points.find((p) => p.point === point)?.shift;
    expect(shift('X4.1.a')).toMatchObject({ topic: 'parted', id: 'X4', dx: -18 });
    expect(shift('X4.1.b')).toMatchObject({ topic: 'parted', id: 'X4', dx: 18 });
    expect(named('FRAME').points.find((p) => p.point === 'X8.1.b')?.shift).toMatchObject({ id: 'X8', dx: 46 });
  });

  it('shows no link of a fuse in its socket, and two of it on the cloth', () => {
    const links = named('CFUSE').layers.filter((l) => l.role === 'link' && l.part === 'F10');
    expect(links.map((l) => l.when?.map((r) => [r.topic, r.is]))).toEqual([[['blown', false]], [['blown', true]]]);
  });

  it('names only points of the book and leaves none of it out', () => {
    const { unreached } = readRules(`${SOURCES}/rules.json`);
    expect(compareWithBook(drawings, BOOK, unreached)).toMatchObject({ unknown: [], missing: [] });
  });
});

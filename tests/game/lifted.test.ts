import { describe, expect, it } from 'vitest';
import { buildDrawings } from '../../assets/build/drawings.ts';
import { lying, lyingAt } from '../../src/game/cloth.ts';
import type { Box, Drawing } from '../../src/game/drawing.ts';
import { isSecond } from '../../src/game/gestures.ts';
import { type Landing, type Lifted, liftedEnds, liftedSvg, looseEnd, withoutEnds } from '../../src/game/lifted.ts';
import { pick } from '../../src/game/pick.ts';
import type { StageView } from '../../src/game/view.ts';
import { spots } from '../../src/game/visible.ts';
import { liftableAt } from '../../src/job/index.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { bareView } from '../support/stage-view.ts';

const view: StageView = {
  ...bareView('BATT'),
  opened: ['AC1', 'AC2', 'AC3', 'AC4', 'AC5', 'AC6', 'AC7', 'AC8', 'AC9', 'AC10', 'AC11', 'AC12'],
  chocks: true,
  reducedMotion: true,
};
const drawings = buildDrawings();
const model = hobbinModel();
const landing = (end: string): Landing | undefined => {
  const [id, side] = end.split('@');
  const wire = model.wires.get(id);
  return wire && { point: side === 'from' ? wire.from : wire.to, colour: wire.colour };
};
const named = (id: string): Drawing => {
  const drawing = drawings.find((d) => d.id === id);
  if (!drawing) throw new Error(`no ${id}`);
  return drawing;
};
const lift = (drawing: Drawing, ...lifted: string[]): Lifted[] => {
  const now = { ...view, lifted };
  return liftedEnds(drawing, now, spots(drawing, now), landing);
};
const share = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y));

/** Every end that can be taken off and whose terminal is drawn, with its drawing. */
const all = drawings.flatMap((drawing) =>
  [...model.book.parts, ...model.book.connectors]
    .flatMap(({ id }) => liftableAt(model, id))
    .flatMap((end) => lift(drawing, end).map((made) => ({ drawing, end, made }))),
);

describe('an end that is off its terminal', () => {
  it('is drawn for every wire of the book that can be taken off', () => {
    const drawn = new Set(all.map(({ end }) => end));
    const can = [...model.book.parts, ...model.book.connectors].flatMap(({ id }) => liftableAt(model, id));
    expect(can.filter((end) => !drawn.has(end))).toEqual([]);
  });

  it.each(['001A@from', '101A@from', '001A@to', '101A@to'])(
    '%s leaves its clamp: the wire drawn there ends short',
    (end) => {
      const batt = named('BATT');
      const [made] = lift(batt, end);
      if (!made) throw new Error(`${end} is not drawn in the battery box`);
      const run = batt.runs?.[made.run?.index ?? -1];
      expect(run?.wire).toBe(end.split('@')[0]);
      const change = withoutEnds(batt, [made]);
      const line = change.get(`run${made.run?.index}`) ?? '';
      const [x, y] = made.run?.side === 0 ? (run?.points ?? []) : (run?.points ?? []).slice(-2);
      expect(line).not.toContain(`M${x} ${y}L`);
      expect(line).not.toContain(`L${x} ${y}"`);
      expect(Math.hypot(made.lug.x - x, made.lug.y - y)).toBeGreaterThan(40);
    },
  );

  it('is marked in its layer, so that it can be drawn otherwise', () => {
    for (const { drawing, made } of all) {
      if (!made.run) continue;
      const marks = drawing.layers.filter((l) => l.svg.includes(`<!--run${made.run?.index}-->`));
      expect(marks.length, `${made.end} in ${drawing.id}`).toBe(1);
    }
  });

  it('lies inside the drawing with its tag, and takes a probe where its lug is drawn', () => {
    for (const { drawing, end, made } of all) {
      const { lug, tag } = made;
      expect(tag.x >= 0 && tag.y >= 0 && tag.x + tag.w <= drawing.width && tag.y + tag.h <= drawing.height, end).toBe(
        true,
      );
      expect(looseEnd(made)).toMatchObject({ point: { point: end }, x: lug.x, y: lug.y });
      expect(liftedSvg(made)).toContain(`>${end.split('@')[0]} off<`);
    }
  });

  it('hangs its tag over lettering only where there is no room at all', () => {
    const over = all.filter(({ drawing, made }) =>
      (drawing.words ?? []).some((word) => share(word, made.tag) > 0.3 * word.w * word.h),
    );
    expect(over.length / all.length).toBeLessThan(0.1);
  });
});

describe('the cloth', () => {
  it('gives the part that lies there to whoever touches it', () => {
    const cfuse = named('CFUSE');
    const now = { ...view, place: 'CFUSE', pulled: ['F10', 'K2'] };
    for (const { part, x, y, box, scale } of lying(cfuse, now)) {
      const [mx, my] = [x + (box.w * scale) / 2, y + (box.h * scale) / 2];
      const picked = pick({ drawing: cfuse, view: now, found: spots(cfuse, now), x: mx, y: my, unit: 1 });
      expect(picked).toMatchObject({ kind: 'part', part });
    }
    expect(lyingAt(cfuse, { ...now, pulled: [] }, 90, 960)).toBeNull();
  });
});

describe('a double click', () => {
  it('is two presses soon after each other at one spot', () => {
    const first = { at: 1000, x: 10, y: 10 };
    expect(isSecond(first, { at: 1200, x: 13, y: 11 })).toBe(true);
    expect(isSecond(first, { at: 1600, x: 10, y: 10 })).toBe(false);
    expect(isSecond(first, { at: 1100, x: 60, y: 10 })).toBe(false);
  });
});

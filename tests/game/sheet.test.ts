import { describe, expect, test } from 'vitest';
import { drawnEdges, findOnSheet, type LaidSheet, layoutSheet, laySheet, overlap } from '../../src/game/sheet/index.ts';
import { isShown } from '../../src/game/visible.ts';
import { buildModel } from '../../src/machine/index.ts';
import { bareView } from '../support/stage-view.ts';
import { readHobbin, readSheets } from './sheet-fixtures.ts';

const book = readHobbin();
const specs = readSheets();
const model = buildModel(book);
const laid = new Map(specs.map((spec) => [spec.id, laySheet(book, spec, specs)]));
const sheet = (id: string): LaidSheet => {
  const found = laid.get(id);
  if (found === undefined) throw new Error(`no sheet ${id}`);
  return found;
};
const hidden = new Set(book.parts.flatMap((part) => (part.hidden ?? []).map((t) => `${part.id}.${t}`)));
const splices = new Set(book.splices.map((splice) => splice.id));
const names = specs.map((spec) => spec.id);

/** Points of the paths that this sheet itself has to show. */
function ownPoints({ plan }: LaidSheet): Set<string> {
  const points = new Set<string>();
  for (const { steps } of plan.paths) for (const { from, to } of steps) points.add(from).add(to);
  for (const point of [...points]) if (hidden.has(point) || plan.elsewhere.has(point)) points.delete(point);
  return points;
}

describe.each(names)('sheet %s', (name) => {
  const { plan, drawing, labels, solids } = sheet(name);

  test('draws only what the book has', () => {
    const inBook = new Set(model.elements.map((element) => element.id));
    for (const id of drawnEdges(plan)) expect(inBook, id).toContain(id);
    for (const { steps } of plan.paths) {
      for (const point of steps.flatMap((step) => [step.from, step.to])) {
        expect(splices.has(point) || model.pointIndex.has(point) || point === book.reference, point).toBe(true);
      }
    }
  });

  test('steps of a path follow each other in the book', () => {
    for (const { steps } of plan.paths) {
      steps.forEach((step, i) => {
        expect([step.edge.a, step.edge.b].sort()).toEqual([step.from, step.to].sort());
        if (i > 0) expect(step.from).toBe(steps[i - 1].to);
      });
    }
  });

  test('has every point of its paths that takes a probe once, and no other but a free throw', () => {
    const drawn = drawing.points.map((p) => p.point);
    expect(new Set(drawn).size).toBe(drawn.length);
    for (const point of ownPoints(sheet(name))) expect(drawn, point).toContain(point);
    for (const point of drawn) {
      expect(splices.has(point) || model.pointIndex.has(point) || point === book.reference, point).toBe(true);
      expect(hidden.has(point), point).toBe(false);
    }
  });

  test('a parted plug is drawn parted, all its pins at once, and the others together', () => {
    const plugs = new Set(
      plan.paths.flatMap(({ steps }) => steps.flatMap(({ edge }) => (edge.kind === 'pin' ? [edge.connector] : []))),
    );
    const drawn = (unplugged: string[]): string[] =>
      drawing.layers
        .filter((l) => ['mated', 'parted'].includes(l.role) && isShown(l, { ...bareView('ENGL'), unplugged }))
        .map((l) => l.id)
        .sort();
    for (const plug of plugs) {
      const others = [...plugs].filter((id) => id !== plug).map((id) => `${id}-mated`);
      expect(drawn([plug])).toEqual([...others, `${plug}-parted`].sort());
    }
  });

  test('points keep their distance', () => {
    for (const [i, p] of drawing.points.entries()) {
      for (const q of drawing.points.slice(i + 1)) {
        expect(Math.hypot(p.x - q.x, p.y - q.y), `${p.point} and ${q.point}`).toBeGreaterThanOrEqual(24);
      }
    }
  });

  test('no label lies over another, over a stroke or off the sheet', () => {
    for (const [i, label] of labels.entries()) {
      const words = label.lines.map((line) => line.text).join(' ');
      expect(label.clash, words).toBe(false);
      for (const other of labels.slice(i + 1)) expect(overlap(label.box, other.box), `${words} / ${other.of}`).toBe(0);
      for (const taken of solids) expect(overlap(label.box, taken), words).toBe(0);
      expect(label.box.x).toBeGreaterThanOrEqual(20);
      expect(label.box.y).toBeGreaterThanOrEqual(20);
      expect(label.box.x + label.box.w).toBeLessThanOrEqual(drawing.width - 20);
      expect(label.box.y + label.box.h).toBeLessThanOrEqual(drawing.height - 20);
    }
  });

  test('type is never under 15', () => {
    for (const { lines } of labels) for (const { size } of lines) expect(size).toBeGreaterThanOrEqual(15);
    for (const { svg } of drawing.layers) {
      for (const [, size] of svg.matchAll(/font-size="([\d.]+)"/g)) expect(Number(size)).toBeGreaterThanOrEqual(15);
    }
  });

  test('every wire of its paths has its text', () => {
    const named = new Set(labels.map((label) => label.of));
    for (const id of drawnEdges(plan)) if (id.startsWith('W:')) expect(named, id).toContain(id);
  });

  test('wires run level or upright', () => {
    for (const { wire, line } of sheet(name).wires) {
      for (let i = 1; i < line.length; i++) {
        const level = line[i].y === line[i - 1].y;
        expect(level !== (line[i].x === line[i - 1].x), wire.id).toBe(true);
      }
    }
  });

  test('needs no style and only known tokens', () => {
    for (const { svg } of drawing.layers) {
      expect(svg).not.toMatch(/style=|<style|class=|#[0-9a-f]{3}|NaN|undefined|Infinity/);
      for (const [, token] of svg.matchAll(/\{([^}]*)\}/g))
        expect(token).toMatch(/^(paper2?|ink2?|halo|casing|r2|w-[A-Z]{2})$/);
    }
  });

  test('comes out the same every time', () => {
    const spec = specs.find((s) => s.id === name) ?? specs[0];
    expect(layoutSheet(book, spec, specs)).toEqual(drawing);
  });
});

describe('both sheets together', () => {
  const drawn = new Set(names.flatMap((name) => [...drawnEdges(sheet(name).plan)]));

  test('hold every wire of the start circuit with its feeds and grounds', () => {
    const numbers = '101 102 103 105 106 107 108 109 110 120 130 201 202 203 205 206 207 208 216 401 402 403 510'.split(
      ' ',
    );
    const grounds = '001 002 003 004 010 015 017 030 031'.split(' ');
    const missing = book.wires
      .filter((wire) => [...numbers, ...grounds].includes(wire.number) && !drawn.has(`W:${wire.id}`))
      .map((wire) => wire.id);
    expect(missing).toEqual([]);
    for (const id of ['121A', '121C', '121D', '121E', '511A', '511B', '511C']) expect(drawn).toContain(`W:${id}`);
  });

  test('hold every element of the start circuit', () => {
    const elements = [
      ...['G1.cell', 'S1.main', 'FM2.link', 'FM3.link', 'FM4.link', 'FM5.link', 'F1.link', 'F10.link', 'F21.link'],
      ...['F30.link', 'F34.link', 'F11.link', 'S2.run', 'S2.crank', 'S3.neutral', 'S4.down', 'S5.on', 'A2.pblamp'],
      ...['K1.coil', 'K1.no', 'K2.coil', 'K2.no', 'K3.coil', 'K3.no', 'K4.coil', 'K4.no', 'K7.coil', 'K7.nc'],
      ...['M1.pull', 'M1.hold', 'M1.contact', 'M1.motor', 'A1.ce', 'A1.mr', 'A1.wake', 'A1.ka', 'A1.crq', 'GND2.stud'],
    ];
    for (const id of elements) expect(drawn, id).toContain(id);
  });

  test('show what one sheet leaves to the other', () => {
    for (const name of names) {
      for (const point of sheet(name).plan.elsewhere) {
        const owners = names.filter(
          (other) => other !== name && sheet(other).drawing.points.some((p) => p.point === point),
        );
        expect(owners, point).toHaveLength(1);
      }
    }
  });

  test('refer to each other by sheet and track', () => {
    const words = (name: string) => sheet(name).labels.flatMap((label) => label.lines.map((line) => line.text));
    expect(words('start')).toContain('30–87 ▸ 9');
    expect(words('start')).toContain('30–87 ▸ 1.2');
    expect(words('start')).toContain('F21 ▸ 1.7');
    expect(words('start-supply')).toContain('▸ 2.4');
  });

  test('can be searched by part, point, connector and wire', () => {
    expect(findOnSheet(sheet('start'), 'K1')).toHaveLength(1);
    expect(findOnSheet(sheet('start'), 'X1.2.a')).toHaveLength(1);
    expect(findOnSheet(sheet('start'), 'X3')).toHaveLength(1);
    expect(findOnSheet(sheet('start'), '206').length).toBe(4);
    expect(findOnSheet(sheet('start'), '206C')).toHaveLength(1);
    expect(findOnSheet(sheet('start'), 'E1')).toEqual([]);
  });
});

/** What the screens work out from the book and the attempt, without a browser. */
import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Action, Attempt, type JobSpec, type Record } from '../../src/job/index.ts';
import { buildModel, type Model } from '../../src/machine/index.ts';
import { findTargets } from '../../src/pages/clipboard/targets.ts';
import { chapters } from '../../src/pages/manual/pages.ts';
import { searchManual } from '../../src/pages/manual/search.ts';
import { digitsOf, lit } from '../../src/pages/meter/digits.ts';
import { shownOn } from '../../src/pages/state/reading.ts';
import { modesOf, pointName, targetName } from '../../src/pages/words/names.ts';
import { displayLine } from '../../src/pages/words/seen.ts';
import { startWords } from '../../src/pages/words/words.ts';
import { readBook } from '../../src/scenario/read-book.ts';
import { readJob } from '../../src/scenario/read-job.ts';

const FOLDER = new URL('../../scenarios/', import.meta.url);
const json = (path: string): unknown => JSON.parse(readFileSync(new URL(path, FOLDER), 'utf8'));

let model: Model;
let job: JobSpec;
beforeAll(() => {
  startWords();
  const names = readdirSync(new URL('machines/hobbin-45/', FOLDER)).filter((name) => name.endsWith('.json'));
  const book = readBook(Object.fromEntries(names.map((name) => [name, json(`machines/hobbin-45/${name}`)])));
  if (!book.ok) throw new Error(JSON.stringify(book.problems[0]));
  model = buildModel(book.book);
  const read = readJob(model, 'job-01', json('jobs/job-01.json'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems[0]));
  job = read.job;
});

describe('the display', () => {
  test.each([
    ['12.41', { minus: false, cells: ['1', '2', '4', '1'], points: [1] }],
    ['-0.003', { minus: true, cells: ['0', '0', '0', '3'], points: [0] }],
    ['598.2', { minus: false, cells: ['5', '9', '8', '2'], points: [2] }],
    ['OL', { minus: false, cells: [' ', ' ', 'O', 'L'], points: [] }],
    ['----', { minus: false, cells: ['-', '-', '-', '-'], points: [] }],
  ])('shows %s', (text, digits) => {
    expect(digitsOf(text)).toEqual(digits);
  });

  test('lights the right segments', () => {
    expect([...'abcdefg'].filter((s) => lit('4', s)).join('')).toBe('bcfg');
    expect([...'abcdefg'].filter((s) => lit(' ', s))).toEqual([]);
  });
});

describe('names', () => {
  test('of points say the wire and its color', () => {
    expect(pointName(model, 'K1.86')).toBe('start relay (K1) terminal 86, wire 206D VT');
    expect(pointName(model, 'X1.2.a')).toBe('cab bulkhead connector (X1) pin 2, cab harness side, wire 206A VT');
    expect(pointName(model, 'GND1.L')).toBe('main frame stud in battery box (GND1) lugs');
    expect(pointName(model, '208A@to')).toBe('wire 208A VT, loose end at starter (M1) terminal 50');
  });

  test('of every point, part and wire are there', () => {
    const nameless = model.points.filter((point) => pointName(model, point).includes('undefined'));
    expect(nameless).toEqual([]);
    expect(targetName(model, 'X:X3.3')).toBe('frame to engine connector (X3) pin 3');
    expect(modesOf(model, 'S1')).toContain('operator');
  });

  test('are found by number, the nearest first', () => {
    expect(findTargets(model, 'K1')[0]?.target).toBe('K1');
    expect(findTargets(model, '206D')[0]?.target).toBe('W:206D');
    expect(findTargets(model, 'x3 3')[0]?.target).toBe('X:X3.3');
    expect(findTargets(model, 'X3.3')[0]?.target).toBe('X:X3.3');
    expect(findTargets(model, ' ')).toEqual([]);
  });
});

describe('the service manual', () => {
  test('has every connector and finds a wire in every chapter that has it', () => {
    const faces = chapters(model).find((c) => c.id === 'connectors')?.leaves ?? [];
    expect(faces.map((leaf) => leaf.id)).toEqual(model.book.connectors.map((c) => c.id));
    expect(searchManual(model, '206D').length).toBeGreaterThan(0);
    expect(searchManual(model, 'no such word')).toEqual([]);
  });
});

describe('a reading', () => {
  test('stands on the display until something that it depends on is changed', () => {
    const attempt = new Attempt(model, job);
    const act = (...actions: Parameters<Attempt['act']>[0][]): void => {
      for (const action of actions) expect(attempt.act(action)).not.toHaveProperty('code');
    };
    act({ do: 'start' }, { do: 'walk', zone: 'BATT' }, { do: 'open', access: 'AC4' }, { do: 'dial', fn: 'volts-dc' });
    act({ do: 'lead', lead: 'red', point: 'G1.+' }, { do: 'lead', lead: 'black', point: 'G1.-' });
    expect(shownOn(attempt)).toBeNull();
    act({ do: 'read' });
    expect(shownOn(attempt)?.display.unit).toBe('V');
    act({ do: 'note', text: 'low' }, { do: 'mark', target: 'G1', suspect: true });
    expect(shownOn(attempt)?.display.unit).toBe('V');
    act({ do: 'lead', lead: 'red', point: null });
    expect(shownOn(attempt)).toBeNull();
    // Held, it stands when the leads come off, and goes when the dial is turned.
    expect(shownOn(attempt, true)?.display.unit).toBe('V');
    act({ do: 'dial', fn: 'ohms' });
    expect(shownOn(attempt)).toBeNull();
    expect(shownOn(attempt, true)).toBeNull();
  });

  test('its line says the least and the greatest that were kept', () => {
    const attempt = new Attempt(model, job);
    const keeps: Action[] = [
      { do: 'start' },
      { do: 'walk', zone: 'BATT' },
      { do: 'open', access: 'AC4' },
      { do: 'dial', fn: 'volts-dc' },
      { do: 'lead', lead: 'red', point: 'G1.+' },
      { do: 'lead', lead: 'black', point: 'G1.-' },
      { do: 'minmax', on: true },
      { do: 'read' },
    ];
    const records = keeps.map((action) => attempt.act(action));
    const last = records[records.length - 1];
    expect(displayLine(last as Record, (point) => point)).toMatch(
      /^Meter: [\d.]+ V, least [\d.]+ V, greatest [\d.]+ V, red on G1\.\+, black on G1\.-\.$/,
    );
  });
});

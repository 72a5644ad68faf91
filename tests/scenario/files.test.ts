import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { loadBookFiles, loadJson, parseJson } from '../../src/cli/files.ts';
import { jsonErrorOffset } from '../../src/cli/json-place.ts';

test.each([
  ['a comma too many', '{\n  "id": "F1",\n}', 'line 3, column 1'],
  ['an end too early', '{\n  "id": "F1"', 'line 2, column 13'],
  ['a word without quotes', '{\n  "id": fuse\n}', 'line 2, column 9'],
  ['text behind its end', '{ "id": "F1" } F2', 'line 1, column 16'],
  ['a line break in a text', '{ "id": "F\n1" }', 'line 1, column 9'],
  ['nothing at all', '', 'line 1, column 1'],
])('JSON with %s is a problem with its place', (_what, text, path) => {
  const result = parseJson('machine.json', text);
  expect(result).toEqual({
    ok: false,
    problem: { file: 'machine.json', path, code: 'bad-json', found: expect.any(String), expected: 'JSON' },
  });
});

test('a file that is not there is a problem, not an exception', () => {
  const result = loadJson('no/such/file.json');
  expect(result).toMatchObject({ ok: false, problem: { file: 'no/such/file.json', code: 'unreadable' } });
});

test('a folder with bad JSON in it names the file', () => {
  const folder = mkdtempSync(join(tmpdir(), 'book-'));
  writeFileSync(join(folder, 'wires.json'), '{ "wires": [');
  const result = loadBookFiles(folder);
  expect(result).toMatchObject({ ok: false, problems: [{ file: join(folder, 'wires.json'), code: 'bad-json' }] });
});

test('no place in sound JSON is wrong, and cutting it short is wrong at its end', () => {
  fc.assert(
    fc.property(fc.json(), fc.nat(), (text, cut) => {
      expect(jsonErrorOffset(text)).toBe(text.length);
      const short = `[${text}`.slice(0, 1 + (cut % (text.length + 1)));
      expect(jsonErrorOffset(short)).toBeLessThanOrEqual(short.length);
    }),
  );
});

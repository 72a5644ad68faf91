/** A whole job with the keyboard alone: from the board to its debrief, by nothing but keys. */
import { execFile } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Grade } from '../../src/grading/index.ts';
import { slip } from './hands.ts';
import { Keyboard } from './keyboard.ts';
import { openSite, type Site, visit } from './support.ts';

const project = fileURLToPath(new URL('../..', import.meta.url));

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Grading weighs every reading against all that could be wrong; it is done beside the page. */
const GRADED = { timeout: 200_000 };

/** A job of a dozen things to do; each has the keys that lead to it and one that does it. */
const MOST_PRESSES = 220;
/** From one thing that is commonly done to the next, presses. */
const LONGEST_WAY = 15;

/** The job whose lever's neutral contact stands short: it is measured, seen, adjusted and proved. */
const JOB = /Started only now and then, now never/;

test('a student repairs a machine with the keyboard alone', { timeout: 600_000 }, async () => {
  const { page, errors, close } = await visit(site);
  const keys = await Keyboard.of(page);
  await takeJob(keys);
  await seeTheComplaint(keys);
  await measure(keys);
  await repair(keys);
  await prove(keys);
  await writeUp(keys);

  await page.locator('.verdict').waitFor(GRADED);
  await keys.held('in the debrief');
  const verdict = await page.locator('.verdict').textContent();
  expect(verdict).toMatch(/^Pass [\d.]+ of 100 points$/);
  const grade = await gradeByCommand(await logByKeys(keys));
  expect(verdict).toBe(`Pass ${grade.total} of 100 points`);
  expect(grade.result).toBe('pass');
  expect(grade.solved).toBe(true);
  const dearest = keys.ways.reduce((most, way) => (way.presses > most.presses ? way : most));
  console.info(`a job by ${keys.presses} presses and ${keys.typed} typed characters;`, 'the longest way:', dearest);
  expect(dearest.presses, dearest.to).toBeLessThanOrEqual(LONGEST_WAY);
  expect(keys.presses).toBeLessThan(MOST_PRESSES);
  expect(errors).toEqual([]);
  await close();
});

async function takeJob(keys: Keyboard): Promise<void> {
  // A page that has just come up has the focus nowhere.
  await keys.press('Tab');
  await keys.do(JOB);
  await keys.page.waitForURL(/#\/job\//);
  await keys.held('on the work order');
  await keys.do(/^Take the job/);
  await keys.page.locator('.stage-host canvas').waitFor();
  await keys.held('in the shop');
}

/** By the key of a part of the list, then on to an entry of it. */
async function by(keys: Keyboard, key: string, name: RegExp): Promise<void> {
  await keys.key(key);
  await keys.do(name);
}

async function walk(keys: Keyboard, place: string): Promise<void> {
  await by(keys, 'w', new RegExp(`^Walk to ${place}`));
  await keys.page.locator('.figure', { hasText: place }).waitFor();
}

async function secure(keys: Keyboard, names: RegExp[], to = true): Promise<void> {
  await keys.key('4');
  for (const name of names) await keys.set(name, to);
  await keys.key('Escape');
}

/** Chocks and a clear view first; then the key, as the operator would. */
async function seeTheComplaint(keys: Keyboard): Promise<void> {
  await secure(keys, [/^Wheels chocked/, /^Everybody clear/]);
  await by(keys, 'k', /^Key switch: hold at start/);
  await slip(keys.page, /Key switch|charge lamp/i);
  await by(keys, 'k', /^Key switch: off/);
}

/** Over the neutral contact, with the key at start: an open contact keeps the battery's volts. */
async function measure(keys: Keyboard): Promise<void> {
  await secure(keys, [/^Steering column/i]);
  await by(keys, 'h', /steering column shroud/i);
  await walk(keys, 'behind');
  await keys.key('i');
  await keys.do(/^Dial$/);
  await keys.to(/^Dial$/);
  await keys.press('ArrowRight');
  await keys.key('h');
  await keys.do(/\bS3\b/);
  await keys.to(/N1.*red lead here/);
  await keys.key('r');
  await keys.to(/N2.*black lead here/);
  await keys.key('b');
  await secure(keys, [/^Everybody clear/]);
  await by(keys, 'k', /^Key switch: hold at start/);
  expect(await slip(keys.page, /Meter: /)).toMatch(/Meter: 1\d\.\d\d V/);
  await by(keys, 'k', /^Key switch: off/);
  await keys.key('i');
  await keys.do(/^Red lead: Take off/);
  await keys.do(/^Black lead: Take off/);
}

async function repair(keys: Keyboard): Promise<void> {
  await walk(keys, 'cab dash face');
  await by(keys, 'f', /\bS3\b/);
  await keys.do(/^Wiggle .*S3/);
  await slip(keys.page, /play in neutral/);
  await keys.do(/^Repair or replace|^Wires and repairs/);
  await keys.do(/^Adjust: .*S3/);
}

async function prove(keys: Keyboard): Promise<void> {
  await by(keys, 'h', /^(Close|Fit) the/);
  await secure(keys, [/^Everybody clear/]);
  await by(keys, 'g', /^Prove the repair/);
  expect(await slip(keys.page, /complaint/)).toMatch(/The complaint is gone/);
  await by(keys, 'k', /^Key switch: off/);
  await secure(keys, [/^Wheels chocked/], false);
}

async function writeUp(keys: Keyboard): Promise<void> {
  await keys.key('6');
  await keys.to(/^Complaint, in your own words/);
  await keys.type('Will not crank in neutral');
  await keys.to(/^Cause/);
  await keys.type('S3');
  await keys.do(/\bS3\b/);
  await keys.to(/^What was wrong with it/);
  await keys.type('out');
  await keys.to(/^Correction/);
  await keys.type('Neutral contact adjusted, both directions checked');
  await keys.do(/^Hand in the write-up/);
  await keys.do(/^Repaired/);
  await keys.do(/^Yes, close it/);
  await keys.page.getByRole('heading', { name: 'Debrief' }).waitFor();
  await keys.held('in the debrief');
}

/** The log, downloaded by the keys as well. */
async function logByKeys(keys: Keyboard): Promise<string> {
  const waiting = keys.page.waitForEvent('download');
  await keys.do(/^Download the log/);
  const file = join(mkdtempSync(join(tmpdir(), 'ohmyard-')), 'attempt.json');
  await (await waiting).saveAs(file);
  return file;
}

async function gradeByCommand(file: string): Promise<Grade> {
  const run = promisify(execFile);
  const { stdout } = await run('npm', ['run', '-s', 'ohmyard', '--', 'grade', file, '--json'], { cwd: project });
  return JSON.parse(stdout);
}

/** Whoever holds the log gets the same entries again; a log that was changed says where it parts from the truth. */
import { expect, test } from 'vitest';
import { type Log, replay } from '../../src/job/index.ts';
import { readAttempt } from '../../src/scenario/read-attempt.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { JOB_IDS, ownWay, theJob } from './at-work.ts';

test.each(JOB_IDS)('%s: its own way, written and read back, gives the same entries bit for bit', (id) => {
  const attempt = ownWay(id);
  const read = readAttempt('attempt.json', JSON.parse(JSON.stringify(attempt.log)));
  expect(read.ok).toBe(true);
  if (!read.ok) return;
  const again = replay(hobbinModel(), theJob(id), read.log);
  expect(again.differences).toEqual([]);
  expect(again.attempt.log).toEqual(attempt.log);
  expect(JSON.stringify(again.attempt.log)).toBe(JSON.stringify(attempt.log));
  expect([again.attempt.tenths, again.attempt.price, again.attempt.timeMs]).toEqual([
    attempt.tenths,
    attempt.price,
    attempt.timeMs,
  ]);
});

test('the chain: each entry names the hash before, and the index counts', () => {
  const { entries } = ownWay('job-05').log;
  entries.forEach((entry, i) => {
    expect(entry.index).toBe(i);
    if (i > 0) expect(entry.previous).toBe(entries[i - 1].hash);
  });
  expect(new Set(entries.map((e) => e.hash)).size).toBe(entries.length);
});

const honest: Log = ownWay('job-05').log;
const reading = honest.entries.findIndex((e) => e.seen.display !== undefined);

function changed(edit: (log: Log) => void) {
  const log = structuredClone(honest);
  edit(log);
  return replay(hobbinModel(), theJob('job-05'), log).differences;
}

test('a changed display differs at its place', () => {
  const shown = honest.entries[reading].seen;
  const differences = changed((log) => {
    const { display } = log.entries[reading].seen;
    if (display !== undefined) display.text = '9.999';
  });
  expect(differences).toEqual([
    {
      path: `entries[${reading}].seen`,
      code: 'differs',
      found: expect.stringContaining('"9.999"'),
      expected: expect.stringContaining(`"${shown.display?.text}"`),
    },
  ]);
});

test.each(['timeMs', 'tenths', 'price'] as const)('a changed %s differs at its place', (field) => {
  const was = honest.entries[3][field];
  const differences = changed((log) => {
    log.entries[3][field] = was + 1;
  });
  expect(differences).toEqual([
    { path: `entries[3].${field}`, code: 'differs', found: String(was + 1), expected: String(was) },
  ]);
});

test('a hidden observation differs at its place', () => {
  const at = honest.entries.findIndex((e) => e.seen.codes.length > 0);
  const differences = changed((log) => {
    log.entries[at].seen.codes = [];
  });
  expect(differences.map((d) => [d.path, d.code])).toEqual([[`entries[${at}].seen`, 'differs']]);
});

test('a changed action breaks the chain from there on', () => {
  const at = honest.entries.findIndex((e) => e.action.do === 'writeUp');
  const differences = changed((log) => {
    log.entries[at].action = { do: 'writeUp', complaint: '', cause: 'K1', mode: 'open_coil', correction: '' };
  });
  expect(differences[0]).toMatchObject({ path: `entries[${at}].hash`, code: 'broken-chain' });
});

test('an action that could not be done is named, and the replay stops there', () => {
  const differences = changed((log) => {
    log.entries[1].action = { do: 'lead', lead: 'red', point: 'G1.+' };
  });
  expect(differences).toEqual([{ path: 'entries[1].action', code: 'refused', found: 'lead', expected: 'not-here' }]);
});

test('an entry left out breaks the chain', () => {
  const differences = changed((log) => {
    log.entries.splice(1, 1);
  });
  expect(differences.map((d) => d.code)).toContain('broken-chain');
});

test('a broken hash is named', () => {
  const differences = changed((log) => {
    log.entries[2].hash = '0'.repeat(64);
  });
  expect(differences).toEqual([
    {
      path: 'entries[2].hash',
      code: 'broken-chain',
      found: `"${'0'.repeat(64)}"`,
      expected: `"${honest.entries[2].hash}"`,
    },
  ]);
});

test('the log of one job replayed on another differs in its header first', () => {
  const { differences } = replay(hobbinModel(), theJob('job-06'), honest);
  expect(differences[0]).toMatchObject({ path: 'header.job', code: 'other-job' });
});

test('another engine and another book are named', () => {
  const differences = changed((log) => {
    log.header.engine = '0.0.0';
    log.header.book = '1'.repeat(64);
  });
  expect(differences.slice(0, 2).map((d) => [d.path, d.code, d.found])).toEqual([
    ['header.engine', 'other-engine', '0.0.0'],
    ['header.book', 'other-book', '1'.repeat(64)],
  ]);
});

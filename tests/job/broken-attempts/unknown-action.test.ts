import { expect, test } from 'vitest';
import { at } from '../broken-jobs/broken-job.ts';
import { problemsOfBroken } from './broken-attempt.ts';

test('an action of an unknown kind is an error, never skipped', () => {
  const problems = problemsOfBroken((log) => {
    at(log, 'entries', 3).action = { do: 'teleport', zone: 'BATT' };
  });
  expect(problems).toEqual([
    {
      file: 'attempt.json',
      path: 'entries[3].action.do',
      code: 'not-allowed',
      found: '"teleport"',
      expected:
        '"start", "ask", "walk", "open", "close", "precaution", "helper", "operate", "instrument", "dial", "jack", "range", "zero", "minmax", "renewFuse", "lead", "read", "look", "wiggle", "codes", "clearCodes", "unplug", "plug", "lift", "land", "pull", "refit", "exchange", "repair", "mark", "note", "verify", "writeUp" or "finish"',
    },
  ]);
});

import { expect, test } from 'vitest';
import { problemsOfBroken } from './broken-job.ts';

test('a step of the way that is no action', () => {
  const problems = problemsOfBroken('job-05', (job) => {
    job.path = [{ do: 'start' }, { do: 'guess' }];
  });
  expect(problems).toEqual([
    {
      file: 'job-05.json',
      path: 'path[1].do',
      code: 'not-allowed',
      found: '"guess"',
      expected:
        '"start", "ask", "walk", "open", "close", "precaution", "helper", "operate", "instrument", "dial", "jack", "range", "zero", "minmax", "renewFuse", "lead", "read", "look", "wiggle", "codes", "clearCodes", "unplug", "plug", "lift", "land", "pull", "refit", "exchange", "repair", "mark", "note", "verify", "writeUp" or "finish"',
    },
  ]);
});

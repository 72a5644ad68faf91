/** Codes are read at the cluster: what has no supply can't answer, and what is not heard is not read. */
import { describe, expect, test } from 'vitest';
import type { Attempt } from '../../src/job/index.ts';
import { work, workedAt } from './at-work.ts';

const codesOf = (attempt: Attempt): string[] => work(attempt, 'codes').seen.codes;

/** The engine controller's plug is off: a second after the key is on the cluster stores that it has lost it. */
const STORED = 'walk ENGL; with clothing; open AC5; unplug X10; walk CDASH; operate key run';

describe('without supply nothing answers', () => {
  test.each([
    ['the key off', 'operate key run; operate key off'],
    ['the disconnect switch off', 'operate key run; walk BATT; operate iso 0; walk CDASH'],
    [
      'the negative cable off',
      'operate key run; walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4; lift 001A@from; walk CDASH',
    ],
  ])('%s', (_what, text) => {
    expect(codesOf(workedAt('job-05', text))).toEqual(['no-answer']);
  });

  test('and nothing can be cleared', () => {
    const attempt = workedAt('job-05', `${STORED}; operate key off`);
    expect(work(attempt, 'clearCodes').seen.codes).toEqual(['no-answer']);
    expect(codesOf(workedOn(attempt))).toContain('code:C11');
  });
});

const workedOn = (attempt: Attempt): Attempt => {
  work(attempt, 'operate key run');
  return attempt;
};

describe('with the key at run', () => {
  test('a sound machine has none stored', () => {
    expect(codesOf(workedAt('job-05', 'operate key run'))).toEqual([]);
  });

  test('the cluster tells which controller it has lost; that one itself is not read', () => {
    const codes = codesOf(workedAt('job-05', STORED));
    expect(codes).toContain('code:C11');
    expect(codes.filter((code) => code.startsWith('code:P'))).toEqual([]);
  });

  test('what is stored stays through key off, until it is cleared at a cluster that is on', () => {
    const attempt = workedAt('job-05', `${STORED}; operate key off; walk ENGL; plug X10; walk CDASH; operate key run`);
    expect(codesOf(attempt)).toContain('code:C11');
    work(attempt, 'clearCodes');
    expect(codesOf(attempt)).not.toContain('code:C11');
  });
});

/** What was done is told as it stood when it was done; what can be done, as it stands now. */
import { beforeAll, expect, test } from 'vitest';
import type { Attempt, Refusal } from '../../src/job/index.ts';
import { Session } from '../../src/pages/state/session.ts';
import { actionName } from '../../src/pages/words/actions.ts';
import { refusalText } from '../../src/pages/words/refusal.ts';
import { startWords, t } from '../../src/pages/words/words.ts';
import { actionsOf, work, workedAt } from '../job/at-work.ts';

beforeAll(startWords);

function sessionAt(attempt: Attempt): Session {
  const { header } = attempt.log;
  const stored = { id: '1', jobId: attempt.job.id, header, takenAt: '', tenths: 0, ended: false, practice: false };
  return new Session(attempt.model, attempt.job, stored, null, attempt);
}

const FUSE_BOX = 'walk CFUSE; open AC1';
const AWAY = 'Exchange neutral relay (K2) and horn relay (K8)';
const BACK = 'Put neutral relay (K2) and horn relay (K8) back in their places';

test('relays that have just changed places have not been put back', () => {
  const attempt = workedAt('job-05', FUSE_BOX);
  const [exchange] = actionsOf('exchange K2 K8');
  const first = work(attempt, 'exchange K2 K8');
  expect(actionName(sessionAt(attempt), exchange, first.before)).toBe(AWAY);
  expect(actionName(sessionAt(attempt), exchange)).toBe(BACK);
  const second = work(attempt, 'exchange K2 K8');
  expect(actionName(sessionAt(attempt), exchange, second.before)).toBe(BACK);
  expect(actionName(sessionAt(attempt), exchange)).toBe(AWAY);
});

test('a relay that has moved on since is not put back by the same pair', () => {
  const attempt = workedAt('job-05', `${FUSE_BOX}; exchange K2 K8; exchange K2 K5`);
  expect(actionName(sessionAt(attempt), actionsOf('exchange K2 K8')[0])).toBe(AWAY);
});

test('where nothing is to be seen from here, nothing is said of what stands elsewhere', () => {
  expect(t('here.seenNone')).toMatch(/\bhere\b/);
});

test('a precaution that the machine belies says what it needs', () => {
  const attempt = workedAt('job-05', 'operate key run');
  const words = (line: string): string =>
    refusalText(sessionAt(attempt), attempt.refusal(actionsOf(line)[0]) as Refusal);
  expect(words('with keyOut')).toContain('Key off');
  expect(words('with helperAtKey')).toContain('helper');
});

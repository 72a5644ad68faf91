/** A relay that is put into another socket takes its fault along, however often it moves, and a new one leaves it behind. */
import { expect, test } from 'vitest';
import type { Attempt } from '../../src/job/index.ts';
import { refusalOf, work, workedAt } from './at-work.ts';

/** K2's make contact has 55 ohms in this job; K2, K5, K6 and K8 are four of a kind. */
const JOB = 'job-10';
const SOCKETS = ['K2', 'K5', 'K6', 'K8'];
const fuseBox = (): Attempt => workedAt(JOB, 'walk CFUSE; open AC1');

/** The socket in which the relay with the burnt contact stands: the one whose contact carries a fault in the network. */
function badAt(attempt: Attempt): string[] {
  const elements = attempt.rig.world.changes.flatMap((change) => ('element' in change ? [change.element] : []));
  return SOCKETS.filter((socket) => elements.includes(`${socket}.no`));
}

test.each([
  ['', ['K2']],
  ['exchange K2 K5', ['K5']],
  ['exchange K5 K2', ['K5']],
  ['exchange K5 K6', ['K2']],
  ['exchange K2 K5; exchange K5 K2', ['K2']],
  ['exchange K2 K5; exchange K5 K6', ['K6']],
  ['exchange K2 K5; exchange K5 K6; exchange K6 K8', ['K8']],
  ['exchange K2 K5; exchange K5 K6; exchange K2 K5', ['K6']],
  ['exchange K5 K6; exchange K2 K5; exchange K5 K6', ['K6']],
  ['exchange K2 K5; exchange K6 K8; exchange K2 K5', ['K2']],
  ['exchange K2 K5; exchange K2 K6; exchange K2 K5', ['K2']],
])('%s: the burnt contact stands in %s', (actions, sockets) => {
  const attempt = fuseBox();
  if (actions !== '') work(attempt, actions);
  expect(badAt(attempt)).toEqual(sockets);
});

test('pairs that do not meet are put back in any order, and nothing is left out of its place', () => {
  const attempt = fuseBox();
  work(attempt, 'exchange K2 K5; exchange K6 K8; exchange K5 K2; exchange K8 K6');
  expect(attempt.bench.exchanged).toEqual([]);
});

test.each([
  ['the relay where it was', 'repair replace K2', []],
  ['the good relay in its old socket', 'exchange K2 K5; repair replace K2', ['K5']],
  ['the bad relay in its new socket', 'exchange K2 K5; repair replace K5', []],
  ['the bad relay after two moves', 'exchange K2 K5; exchange K5 K6; repair replace K6', []],
  ['one that it only passed through', 'exchange K2 K5; exchange K5 K6; repair replace K5', ['K6']],
])('a new relay for %s', (_, actions, sockets) => {
  const attempt = fuseBox();
  work(attempt, actions);
  expect(badAt(attempt)).toEqual(sockets);
});

test('a relay is not exchanged with itself', () => {
  expect(refusalOf(fuseBox(), 'exchange K2 K2')).not.toBe('');
});

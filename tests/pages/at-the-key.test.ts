/** What is said where the key is turned and where the job is closed: what lapsed, and where the proof is made. */
import { beforeAll, describe, expect, test } from 'vitest';
import { lapsedHere } from '../../src/pages/here/lapsed-lines.tsx';
import { controlsHere } from '../../src/pages/here/offers.ts';
import { proofIsDue } from '../../src/pages/here/proof-due.tsx';
import { lacksHelper } from '../../src/pages/state/needs-helper.ts';
import { notesOf } from '../../src/pages/state/notebook.ts';
import { Session } from '../../src/pages/state/session.ts';
import { stillOpen } from '../../src/pages/state/still-open.ts';
import { startWords } from '../../src/pages/words/words.ts';
import { workedAt } from '../job/at-work.ts';

beforeAll(startWords);

function sessionAt(job: string, work: string): Session {
  const attempt = workedAt(job, work);
  const stored = {
    id: '1',
    jobId: job,
    header: attempt.log.header,
    takenAt: '2025-11-01T08:00:00.000Z',
    tenths: 0,
    ended: false,
    practice: false,
  };
  return new Session(attempt.model, attempt.job, stored, null, attempt);
}

describe('a precaution that something else has taken away', () => {
  test('is said with what took it', () => {
    expect(lapsedHere(sessionAt('job-01', 'with helperClear'))).toEqual([]);
    expect(lapsedHere(sessionAt('job-01', 'with helperClear; helper call'))).toEqual([
      { id: 'helperClear', since: 'since the helper came' },
    ]);
    expect(lapsedHere(sessionAt('job-01', 'with helperClear; helper call; with helperClear'))).toEqual([]);
    expect(lapsedHere(sessionAt('job-01', 'with helperClear; without helperClear'))).toEqual([]);
  });

  test('is not asked for again where nobody is there to keep it', () => {
    const session = sessionAt('job-01', 'helper call; with helperAtKey; helper off');
    expect(lapsedHere(session)).toEqual([]);
    const atKey = session.book.precautions.find((p) => p.id === 'helperAtKey');
    if (atKey === undefined) throw new Error('no such precaution');
    expect(lacksHelper(session, atKey)).toBe(true);
    expect(lacksHelper(sessionAt('job-01', 'helper call'), atKey)).toBe(false);
  });
});

test('a switch where the student stands is set by the student, with a helper in the cab too', () => {
  const offers = controlsHere(sessionAt('job-01', 'helper call; walk BATT; open AC4'));
  const byWhom = (control: string) => offers.find((o) => o.control === control)?.byHelper;
  expect([byWhom('iso'), byWhom('key')]).toEqual([false, true]);
});

describe('the proof', () => {
  const CHARGED = 'walk BATT; open AC4; repair charge G1';

  test('is led to from where one stands, and is due in the cab only after work', () => {
    const remedies = (session: Session) => stillOpen(session).flatMap(({ remedy }) => (remedy ? [remedy.do] : []));
    const outside = sessionAt('job-01', CHARGED);
    expect([remedies(outside), proofIsDue(outside)]).toEqual([['walk'], false]);
    const inside = sessionAt('job-01', `${CHARGED}; walk CDASH`);
    expect([remedies(inside), proofIsDue(inside)]).toEqual([['verify'], true]);
    expect(proofIsDue(sessionAt('job-01', 'look CDASH'))).toBe(false);
    expect(proofIsDue(sessionAt('job-01', `${CHARGED}; walk CDASH; verify`))).toBe(false);
  });
});

test('a note names the empty seat where somebody made it so, not where nobody can sit in it', () => {
  const noted = (work: string) =>
    notesOf(sessionAt('job-01', work))
      .at(-1)
      ?.controls.map(([control]) => control);
  expect(noted('walk BATT; look BATT')).toEqual([]);
  expect(noted('operate seat off; look CDASH')).toEqual(['seat']);
});

/** What cannot be done from here is refused with a stable code, costs nothing and changes nothing. */
import { describe, expect, test } from 'vitest';
import { isRefusal } from '../../src/job/index.ts';
import { actionsOf, attemptAt, refusalOf, workedAt } from './at-work.ts';

/** Ready at the battery, as one may be there. */
const AT_BATTERY = 'walk BATT; with eyeProtection; with noFlame; with jewelryOff; open AC4';

const CASES: [what: string, before: string, action: string, refusal: string][] = [
  ['a part behind a cover', 'walk BATT', 'red G1.+', 'covered AC4'],
  ['a part behind a cover, looked at', 'walk BATT', 'look G1', 'covered AC4'],
  ['a part behind a cover, replaced', 'walk ENGL', 'repair replace K1', 'covered AC5'],
  ['a relay behind a cover, pulled', 'walk CFUSE', 'pull K2', 'covered AC1'],
  ['a part elsewhere', '', 'red G1.+', 'not-here BATT'],
  ['a connector elsewhere', '', 'unplug X1', 'not-here USEAT'],
  ['a cover elsewhere', '', 'open AC4', 'not-here AC4'],
  ['a zone looked at from afar', '', 'look BATT', 'not-here BATT'],
  ['a switch elsewhere', '', 'operate iso 0', 'not-here BATT'],
  ['the codes, out of the cab', 'walk BATT', 'codes', 'not-here CDASH'],
  ['the proof, out of the cab', 'walk BATT', 'verify', 'not-here CDASH'],
  ['the key, out of the cab and alone', 'walk BATT', 'operate key start', 'needs-helper CDASH'],
  ['the pin of a sealed plug', 'walk USEAT; with seatStay; open AC3', 'red X1.2.b', 'must-be-parted X1'],
  ['a wire end that is still on', 'walk ENGL; with clothing; open AC5', 'red 208A@to', 'not-probeable 208A@to'],
  ['a splice inside a loom', '', 'red SP1', 'not-probeable SP1'],
  ['a part that sits in no socket', AT_BATTERY, 'pull G1', 'not-in-socket G1'],
  ['relays of different types', 'walk CFUSE; open AC1', 'exchange K2 K7', 'not-alike K7'],
  ['no relays at all', 'walk CFUSE; open AC1', 'exchange F10 K2', 'not-in-socket F10'],
  ['a repair that is none for this', AT_BATTERY, 'repair splice G1', 'wrong-repair splice'],
  [
    'a pin inside a plug that is together',
    'walk USEAT; with seatStay; open AC3',
    'repair clean X:X1.2',
    'must-be-parted X1',
  ],
  ['a cover that is open', 'walk CFUSE; open AC1', 'open AC1', 'already AC1'],
  ['a cover that is closed', 'walk CFUSE', 'close AC1', 'already AC1'],
  ['the zone where one stands', '', 'walk CDASH', 'already CDASH'],
  ['a position that it stands in', '', 'operate key off', 'already off'],
  ['a relay that is out', 'walk CFUSE; open AC1; pull K2', 'pull K2', 'already K2'],
  ['a reading without leads', 'dial volts-dc', 'read', 'not-probeable leads'],
  ['a reading with the dial at off', `${AT_BATTERY}; red G1.+; black G1.-`, 'read', 'unknown off'],
  ['a zone that the book does not have', '', 'walk NOWHERE', 'unknown NOWHERE'],
  ['a cover that the book does not have', '', 'open AC99', 'unknown AC99'],
  ['a control that the book does not have', '', 'operate nothing 1', 'unknown nothing'],
  ['a position that the control does not have', '', 'operate key sideways', 'unknown key'],
  ['a point that the book does not have', '', 'red X99.1.a', 'unknown X99.1.a'],
  ['a precaution that the book does not have', '', 'with luck', 'unknown luck'],
  ['the surroundings, by hand', '', 'operate cold 1', 'unknown cold'],
  ['a second start', '', 'start', 'not-started start'],
];

describe('is refused:', () => {
  test.each(CASES)('%s', (_, before, action, refusal) => {
    const attempt = workedAt('job-05', before);
    expect(refusalOf(attempt, action)).toBe(refusal);
    const { bench, timeMs, tenths, price, phase } = attempt;
    const entries = attempt.log.entries.length;
    expect(isRefusal(attempt.act(actionsOf(action)[0]))).toBe(true);
    expect({ bench: attempt.bench, timeMs: attempt.timeMs }).toEqual({ bench, timeMs });
    expect([attempt.tenths, attempt.price, attempt.phase]).toEqual([tenths, price, phase]);
    expect(attempt.log.entries).toHaveLength(entries);
  });
});

test('everything, before the work order has been taken', () => {
  const attempt = attemptAt('job-05');
  expect(refusalOf(attempt, 'walk BATT')).toBe('not-started walk');
  expect(refusalOf(attempt, 'finish repaired')).toBe('not-started finish');
  expect(refusalOf(attempt, 'start')).toBe('');
});

test('everything, after the end', () => {
  const attempt = workedAt('job-05', 'writeUp K1 open_coil; finish not-safe');
  expect(refusalOf(attempt, 'walk BATT')).toBe('ended walk');
  expect(refusalOf(attempt, 'start')).toBe('ended start');
  expect(refusalOf(attempt, 'finish repaired')).toBe('ended finish');
});

test('not refused any more: what was in the way is gone', () => {
  const attempt = workedAt('job-05', 'walk USEAT; with seatStay; open AC3; unplug X1');
  expect(refusalOf(attempt, 'red X1.2.b')).toBe('');
  expect(refusalOf(attempt, 'operate key run')).toBe('');
});

/**
 * What eyes and ears get of each circuit in a sound machine, and what a training fault of the book changes of it
 * (patches and states of its faults table): so that a job on any of these circuits can state its complaint.
 */
import { describe, expect, test } from 'vitest';
import { noticed } from '../../src/job/observables.ts';
import { READING_AFTER_MS } from '../../src/job/rig.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { arrivalOf, patchChanges } from '../support/patch.ts';
import { stateText } from '../support/states.ts';

const CAB = 'CDASH';

/** Codes seen or heard in a state of the book, with a fault of it. */
function codesIn(state: string, patch = '', arrival = ''): string[] {
  const found = arrivalOf(arrival);
  const world = drive({
    model: hobbinModel(),
    settings: [stateText(state), ...found.settings].join(' '),
    changes: patch === '' ? [] : patchChanges(patch),
    arrive: (machine) => {
      for (const fuse of found.blown) machine.setRegion(fuse, 'blown');
    },
  });
  world.advance(READING_AFTER_MS);
  return noticed(world, CAB);
}

const TURN_LEFT = ['left-tell-tale', 'turn-front-left', 'turn-rear-left'];
const REAR = ['tail-left', 'tail-right', 'plate-lamp'];

describe('a sound machine', () => {
  test.each<[state: string, shows: string[]]>([
    ['run', []],
    ['run+lights=side', ['side-left', 'side-right', ...REAR]],
    ['run+lights=head', ['headlights', 'headlight-right', 'side-left', 'side-right', ...REAR]],
    ['run+pedal=1', ['stop-left', 'stop-right']],
    ['run+turn=L', TURN_LEFT],
    ['off+hazard=1', [...TURN_LEFT, 'right-tell-tale', 'turn-front-right', 'turn-rear-right']],
    ['run+wlf=1', ['work-lights', 'work-front-right']],
    ['run+wlr=1', ['work-rear-left', 'work-rear-right']],
    ['run+beacon=1', ['beacon']],
    ['off+door=open', ['cab-lamp']],
    ['run+wiper=1', ['wiper']],
    ['run+wiper=2', ['wiper']],
    ['run+washer=1', ['washer']],
    ['run+blower=2', ['blower']],
    ['run+blower=3', ['blower', 'blower-full']],
    ['run+lever=R', ['reverse-alarm']],
    ['off+hornbtn=1', ['horn']],
  ])('%s: all of this and no more than with the key alone', (state, shows) => {
    const alone = codesIn(state.startsWith('off') ? 'off' : 'run');
    const added = codesIn(state).filter((code) => !alone.includes(code) && code !== 'panel-light');
    expect(added.sort()).toEqual([...shows].sort());
  });

  test('at work: it pulls forward in second range, and the arms follow; in reverse it pulls back', () => {
    expect(codesIn('work')).toEqual(expect.arrayContaining(['arms', 'pulls-forward', 'second-range']));
    expect(codesIn('reverse')).toEqual(expect.arrayContaining(['arms', 'pulls-back', 'reverse-alarm']));
    expect(codesIn('reverse')).not.toContain('pulls-forward');
  });

  test('nothing stands across the screen or glows where it should not, in any of these', () => {
    for (const state of ['off', 'run', 'run+wiper=1', 'run+lights=head+pedal=1', 'lights', 'crank']) {
      const odd = ['wiper-slow', 'wiper-short', 'rear-glow', 'front-glow', 'alarm-weak', 'flashes-fast'];
      expect(codesIn(state).filter((code) => odd.includes(code))).toEqual([]);
    }
  });
});

describe('a fault of the book shows what its operator says', () => {
  test.each<[id: string, state: string, patch: string, seen: string[], missing: string[]]>([
    ['T06 one headlight', 'run+lights=head', 'elem E1.fil56 open', ['headlight-right'], ['headlights']],
    ['T07 roof light left', 'run+wlf=1', 'elem E11.fil+ open', ['work-front-right'], ['work-lights']],
    [
      'T08 front, not back',
      'run+wlf=1+wlr=1',
      'elem K5.coil open',
      ['work-rear-left'],
      ['work-lights', 'work-front-right'],
    ],
    ['T10 brake lights never off', 'run', 'elem S7.on closed', ['stop-left', 'stop-right'], []],
    ['T11 no water', 'run+washer=1', 'elem M3.mot open', [], ['washer']],
    ['T12 fan on two and three only', 'run+blower=1', 'elem R4.r12 open', [], ['blower']],
    ['T13 horn died', 'off+hornbtn=1', 'elem F3.link open', [], ['horn']],
    ['T32 tail lights glow with the brake', 'run+pedal=1', 'open W:034E', ['rear-glow'], ['stop-left', 'stop-right']],
    ['T35 lamp on, door shut', 'off', 'elem S28.open closed', ['cab-lamp'], []],
    ['T38 wiper slow with the fan on three', 'run+wiper=1+blower=3', 'res W:004A 0.35', ['wiper', 'wiper-slow'], []],
    ['T38 fan slow', 'run+blower=3', 'res W:004A 0.35', ['blower'], ['blower-full']],
    ['T40 arms dead', 'idle+hydsw=1', 'elem K11.nc open', [], ['arms']],
    [
      'T42 right indicator fast',
      'run+turn=R',
      'elem E10.filR open',
      ['flashes-fast', 'turn-front-right'],
      ['turn-rear-right'],
    ],
    ['T45 turtle only', 'idle+second=1', 'open W:809C', [], ['second-range']],
    ['T69 headlights glow', 'run+lights=head', 'res W:006A 3', ['front-glow'], ['headlights', 'headlight-right']],
    ['T83 tail next to it lights', 'run+pedal=1', 'open X:X19.4', ['rear-glow', 'stop-left'], ['stop-right']],
    ['T84 alarm with side lights', 'run+lights=side', 'short X7.1.b X7.6.b 40', ['alarm-weak'], []],
  ])('%s', (_, state, patch, seen, missing) => {
    const codes = codesIn(state, patch);
    expect(codes).toEqual(expect.arrayContaining(seen));
    expect(codes.filter((code) => missing.includes(code))).toEqual([]);
    // What the fault takes away is there in a sound machine.
    expect(codesIn(state)).toEqual(expect.arrayContaining(missing));
  });

  test('T33 no drive either way with F13 blown', () => {
    for (const lever of ['F', 'R']) {
      const codes = codesIn(`idle+pbrake=0+lever=${lever}`, '', 'blown=F13');
      expect(codes).not.toContain(lever === 'F' ? 'pulls-forward' : 'pulls-back');
      expect(codesIn(`idle+pbrake=0+lever=${lever}`)).toContain(lever === 'F' ? 'pulls-forward' : 'pulls-back');
    }
  });

  test('T43 seized wiper: nothing sweeps, and its fuse is gone', () => {
    expect(codesIn('run+wiper=1', 'elem M2.low 0.70; elem M2.high 0.55')).not.toContain('wiper');
  });
});

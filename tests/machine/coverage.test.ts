/**
 * What opening each of the book's 376 wires switches off or on, in eight composite states (`coverage.tsv` beside this
 * test, from the electrical book: relays, controllers, outputs and networks that change, computed on its own solver).
 */
import { describe, expect, it } from 'vitest';
import type { World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { drive } from '../support/drive.ts';
import { energizedIn } from '../support/energized.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { readTsv } from '../support/tsv.ts';

const rows = readTsv('coverage.tsv', import.meta.url);
/** With the engine running every third wire, as a release script all of them. */
const EVERY = process.env.OHMYARD_RELEASE === undefined ? 3 : 1;
const model = hobbinModel();

const EVERYTHING =
  'key=run rpm=2200 pbrake=0 hydsw=1 second=1 lights=head wlf=1 wlr=1 beacon=1 blower=3 hornbtn=1 wiper=1 washer=1 pedal=1 door=open';

/** The book's `run` stands within the first three seconds, while A1 primes: K9 is on. */
const AT_REST: Record<string, string> = {
  off: '',
  hazard_off: 'hazard=1',
  run: 'key=run prime=1',
  crank: 'key=start',
  preheat: 'key=run heat=1',
};
const RUNNING: Record<string, string> = {
  on_left: `${EVERYTHING} lever=F turn=L aux=plus`,
  on_right: `${EVERYTHING} lever=R turn=R aux=minus`,
  hazard: 'key=run rpm=1500 seat=off hazard=1',
};
/** The tables hold these whatever the wire does to the engine's fuel and to the two-speed button. */
const ENGINE_HELD: Change = { kind: 'stuck', region: 'engine', state: 'running' };
const SECOND_HELD: Change = { kind: 'stuck', region: 'A3.second', state: 'on' };
/** All timers have run, ms. */
const SETTLED_MS = 3000;

/**
 * These leave the cluster on a ground that floats: it browns out and wakes again for ever (fault T92), and what is on
 * depends on the moment. The book's solver stops at a state that does not repeat.
 */
const HUNTING = ['004A', '017A'];

/** The book's solver lets A1 wake on a floating cab; the last test below shows why it does not here. */
const FLOATING_CAB = '003A: book [A1_RUN K4], here []';

const open = (wire: string): Change => ({ kind: 'series', element: `W:${wire}`, ohms: null });
const alias = (name: string): string => name.replace(/^A3_(?=Y)/, '');
const isCompared = (name: string): boolean =>
  /^(K\d+|M1|A\d_RUN|A1_CE|A1_FP|CAN.*|Y\d|ALT)$/.test(name) && name !== 'K13';

function changed(sound: readonly string[], now: readonly string[]): string {
  const off = sound.filter((name) => !now.includes(name));
  const on = now.filter((name) => !sound.includes(name));
  return [...off, ...on].filter(isCompared).sort().join(' ');
}

/** Wires at which book and model differ, with both answers. */
function differing(state: string, onOf: (changes: Change[]) => readonly string[], every = 1): string[] {
  const sound = onOf([]);
  return rows.flatMap((row, i) => {
    if (i % every !== 0 || HUNTING.includes(row.wire)) return [];
    const book = row[state].split(' ').map(alias).filter(isCompared).sort().join(' ');
    const here = changed(sound, onOf([open(row.wire)]));
    return here === book ? [] : [`${row.wire}: book [${book}], here [${here}]`];
  });
}

function waited(world: World): World {
  world.advance(SETTLED_MS);
  return world;
}

it('every wire of the book is in the table', () => {
  expect(rows.map((row) => row.wire).sort()).toEqual(model.book.wires.map((wire) => wire.id).sort());
});

describe('opening a wire changes what the book says', () => {
  it.each(Object.keys(AT_REST))('%s', (state) => {
    const settings = AT_REST[state];
    const onOf = (changes: Change[]) => {
      const world = drive({ model, settings, changes });
      // A key that stays off passes no time: what a sneak path wakes needs its 0.3 s.
      return energizedIn(settings.includes('key') ? world : waited(world));
    };
    expect(differing(state, onOf)).toEqual(state === 'off' ? [FLOATING_CAB] : []);
  });

  it.each(Object.keys(RUNNING))('%s, with the engine running', (state) => {
    const settings = RUNNING[state];
    const held = settings.includes('second') ? [ENGINE_HELD, SECOND_HELD] : [ENGINE_HELD];
    const onOf = (changes: Change[]) => energizedIn(drive({ model, settings, changes: [...held, ...changes] }));
    expect(differing(state, onOf, EVERY)).toEqual([]);
  });

  it('key off, cab strap open: the cab floats to 0.7 V, far from the 6.0 V at which A1 wakes (book, controllers)', () => {
    const world = waited(drive({ model, settings: '', changes: [open('003A')] }));
    expect(world.voltsBetween('A1.6', 'A1.3')).toBeLessThan(1);
    expect(world.voltsBetween('A1.6', 'A1.3')).toBeGreaterThan(0.1);
  });
});

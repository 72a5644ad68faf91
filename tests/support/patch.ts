/** The electrical book's own short language for faults and for what hands do while measuring, as changes of a machine. */
import type { Model } from '../../src/machine/index.ts';
import type { Change, PointId } from '../../src/parts/index.ts';
import { hobbinBook } from './hobbin.ts';
import { settingsOf } from './states.ts';

/** The battery of the book when fully charged, volts at rest (BCI table: 12.65). */
const CHARGED_VOLTS = 12.65;
const BATTERY = 'G1.cell';

const open = (element: string): Change => ({ kind: 'series', element, ohms: null });

/** `elem F10.link open; res W:101A 0.35; wshort 207A 0.5 GND2.M 0.1; wshort 901D 0.5 W:902D 0.5`. */
export function patchChanges(patch: string): Change[] {
  return patch.split(';').flatMap((text) => patchOf(text.trim().split(/\s+/)));
}

type Arm = [point: PointId, ohms: number];

/** A star of resistances without its middle: every two ends are joined by the product of theirs times the sum of 1/R. */
const meshed = (arms: readonly Arm[]): Join[] => {
  const siemens = arms.reduce((sum, [, ohms]) => sum + 1 / ohms, 0);
  return arms.flatMap(([a, ra], i) => arms.slice(i + 1).map(([b, rb]): Join => ({ a, b, ohms: ra * rb * siemens })));
};
interface Join {
  a: PointId;
  b: PointId;
  ohms: number;
}

/** The two halves of a wire, from a place along it. */
function halves(id: string, at: number): Arm[] {
  const wire = hobbinBook().wires.find((w) => w.id === id);
  if (wire === undefined) throw new Error(`no such wire in the book: ${id}`);
  return [
    [wire.from, wire.ohms * at],
    [wire.to, wire.ohms * (1 - at)],
  ];
}

/** `wshort 901D 0.5 W:902D 0.5`: two wires that touch halfway, as resistances between their four ends. */
function touching(wire: string, at: number, other: string, ohms: number): Change[] {
  const place = `${other} halfway`;
  const first = meshed([...halves(wire, at), [place, ohms]]);
  const isAtPlace = ({ a, b }: Join) => a === place || b === place;
  const arms = first.filter(isAtPlace).map((join): Arm => [join.a === place ? join.b : join.a, join.ohms]);
  const joins = [...first.filter((join) => !isAtPlace(join)), ...meshed([...arms, ...halves(other, 0.5)])];
  return [open(`W:${wire}`), open(`W:${other}`), ...joins.map((join): Change => ({ kind: 'bridge', ...join }))];
}

/** `set`: a battery's resistance, a dead alternator, a tracker that stays awake; `canok 1` is nothing wrong. */
function setting(name: string, value: string): Change[] {
  switch (name) {
    case 'ri':
      return [{ kind: 'battery', element: BATTERY, ohms: Number(value) }];
    case 'altdead':
      return [{ kind: 'stuck', region: 'G2', state: 'rest' }];
    case 'canok':
    case 'trk':
      return [];
    default:
      throw new Error(`nothing to set in the patch language: ${name}`);
  }
}

/** What a patch sets that is a position in our book and not a change: `trk=awake`. */
export function patchSettings(patch: string): string[] {
  return patch.split(';').flatMap((text) => {
    const [verb, name, value] = text.trim().split(/\s+/);
    return verb === 'set' && name === 'trk' ? [`trk=${value}`] : [];
  });
}

function patchOf(words: string[]): Change[] {
  const [verb, subject, first, second, third] = words;
  switch (verb) {
    case 'open':
      return [open(subject)];
    case 'res':
      return [{ kind: 'series', element: subject, ohms: Number(first) }];
    case 'elem':
      if (first === 'open') return [open(subject)];
      if (first === 'closed') return [{ kind: 'closed', element: subject }];
      return [{ kind: 'ohms', element: subject, ohms: Number(first) }];
    case 'short':
      return [{ kind: 'bridge', a: subject, b: first, ohms: Number(second) }];
    case 'wshort':
      if (second.startsWith('W:')) return touching(subject, Number(first), second.slice(2), Number(third));
      return [{ kind: 'chafe', wire: subject, at: Number(first), to: second, ohms: Number(third) }];
    case 'stuck':
      return [{ kind: 'stuck', region: subject, state: first === '1' ? 'on' : 'off' }];
    case 'set':
      return setting(subject, first);
    default:
      throw new Error(`not in the patch language: ${words.join(' ')}`);
  }
}

/** What the machine is like when it arrives: `ocv=12.05`, `iso=0`, `level=180`, `blown=F10`. */
interface Arrival {
  changes: Change[];
  settings: string[];
  blown: string[];
}

export function arrivalOf(text: string): Arrival {
  const arrival: Arrival = { changes: [], settings: [], blown: [] };
  for (const [name, value] of settingsOf(text)) {
    if (name === 'ocv') arrival.changes.push({ kind: 'battery', element: BATTERY, openVolts: Number(value) });
    else if (name === 'blown') arrival.blown.push(value);
    else arrival.settings.push(`${name}=${value}`);
  }
  return arrival;
}

/** What hands have done for a reading: `pull K2,lift 208A,unplug X1,breakout X3,new F10,charged,set lever F`. */
interface Hands {
  changes: Change[];
  settings: string[];
  renewed: string[];
}

export function handsOf(model: Model, text: string): Hands {
  const hands: Hands = { changes: [], settings: [], renewed: [] };
  const { book, elements } = model;
  for (const step of text.split(',').filter((s) => s !== '')) {
    const [verb, subject, value] = step.trim().split(/\s+/);
    if (verb === 'pull') hands.changes.push(...elements.filter((e) => e.owner === subject).map((e) => open(e.id)));
    else if (verb === 'lift') hands.changes.push(open(`L:${subject.includes('@') ? subject : `${subject}@from`}`));
    else if (verb === 'unplug') {
      const pins = book.connectors.find((c) => c.id === subject)?.pins ?? [];
      hands.changes.push(...pins.map((pin) => open(`X:${subject}.${pin.pin}`)));
    } else if (verb === 'new') hands.renewed.push(subject);
    else if (verb === 'charged') hands.changes.push({ kind: 'battery', element: BATTERY, openVolts: CHARGED_VOLTS });
    else if (verb === 'set') hands.settings.push(`${subject}=${value}`);
    // Leads clipped on beforehand and a break-out lead change nothing in the network.
    else if (verb !== 'breakout' && verb !== 'clip') throw new Error(`hands cannot do: ${step}`);
  }
  return hands;
}

/** `12.62 V`, `2 mV`, `0.02 ohm`, `307.9 A`, `OL`: base units; null for over range. */
export function printedValue(text: string): number | null {
  if (text === 'OL') return null;
  const [number, unit] = text.split(' ');
  const scale = { V: 1, mV: 1e-3, A: 1, mA: 1e-3, ohm: 1, kohm: 1e3, k: 1e3 }[unit];
  if (scale === undefined) throw new Error(`not a printed value: ${text}`);
  return Number(number) * scale;
}

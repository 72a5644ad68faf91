/** The notebook: every reading and what was noticed, with where, under which controls and when. From the log alone. */
import { inCab, type Record } from '../../job/index.ts';
import { KnownControls } from './known-controls.ts';
import type { Session } from './session.ts';

export interface Note {
  index: number;
  /** Tenths of a shop minute at which it was written. */
  tenths: number;
  record: Record;
  /** Controls that stood elsewhere than usual when it was seen. */
  controls: [control: string, value: string][];
}

const QUIET = [
  'start',
  'lead',
  'dial',
  'jack',
  'range',
  'minmax',
  'instrument',
  'walk',
  'mark',
  'writeUp',
  'finish',
  'precaution',
  'open',
  'close',
  'helper',
];

export function notesOf({ attempt, book, job }: Session): Note[] {
  const controls: { [id: string]: string } = Object.fromEntries(book.controls.map((c) => [c.id, c.initial]));
  Object.assign(controls, job.arrival.controls);
  const notes: Note[] = [];
  const known = new KnownControls(book);
  let tenths = 0;
  for (const record of attempt.records) {
    tenths += record.cost.tenths;
    known.tell(record);
    const at = { ...controls };
    for (const step of record.steps) {
      if (!('control' in step)) continue;
      controls[step.control] = step.value;
    }
    const { action, seen, index } = record.entry;
    if (action.do === 'operate') at[action.control] = action.value;
    const counts = seen.display !== undefined || seen.codes.length > 0 || !QUIET.includes(action.do);
    if (counts)
      notes.push({ index, tenths, record, controls: unusual(book, at, record).filter(([id]) => known.has(id)) });
  }
  return notes;
}

/** That the seat is empty goes without saying where nobody is in the cab. */
function unusual(book: Session['book'], at: { [id: string]: string }, { before, after }: Record): Note['controls'] {
  const { control, empty } = book.seat;
  const deserted = !inCab(book, before.zone) && after.helperUntilMs === null;
  return book.controls
    .filter((c) => c.surroundings !== true && at[c.id] !== c.initial)
    .filter((c) => !(deserted && c.id === control && at[c.id] === empty))
    .map((c) => [c.id, at[c.id] ?? '']);
}

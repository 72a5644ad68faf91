/** Readings and what was noticed, written down by themselves; and the student's own notes. */
import { useState } from 'preact/hooks';
import { GrowingText } from '../parts/growing-text.tsx';
import { type Note, notesOf } from '../state/notebook.ts';
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { actionName } from '../words/actions.ts';
import { controlName, pointName, valueName, zoneName } from '../words/names.ts';
import { glowWord, seenLines } from '../words/seen.ts';
import { stopped, t, wordFor } from '../words/words.ts';
import { Download } from './download.tsx';

export function Notebook({ session }: { session: Session }) {
  const [text, setText] = useState('');
  const notes = notesOf(session);
  const write = (event: Event): void => {
    event.preventDefault();
    if (text.trim() === '') return;
    session.act({ do: 'note', text: text.trim() });
    setText('');
  };
  return (
    <>
      {notes.length === 0 ? <p class="hint">{t('clip.notesEmpty')}</p> : null}
      <ol class="notes">
        {[...notes].reverse().map((note) => (
          <NoteRow key={note.index} session={session} note={note} />
        ))}
      </ol>
      <form class="add-note" onSubmit={write}>
        <GrowingText label={t('clip.addNote')} value={text} onText={setText} />
        <button type="submit" class="plain">
          {t('clip.addNoteButton')}
        </button>
      </form>
      <Download session={session} />
    </>
  );
}

function NoteRow({ session, note }: { session: Session; note: Note }) {
  const { book } = session;
  const { record, controls, tenths } = note;
  const reading = readingOf(session, note);
  const { action } = record.entry;
  const did = actionName(session, action, record.before);
  const what = reading === null ? did : action.do === 'operate' ? `${stopped(did)} ${reading}` : reading;
  const value = resultOf(note);
  const seen = seenLines(session.model, session.job, record).filter(
    (line) => value === null || record.seen.codes.length > 0 || line === '',
  );
  return (
    <li class={value === null ? 'note' : 'note note-reading'}>
      <span class="note-minute">{minutes(tenths)}</span>
      <div>
        <p class="note-what">
          {value === null ? stopped(what) : what}
          {value === null ? null : <b class="note-value">{value}</b>}
        </p>
        {seen.map((line) => (
          <p key={line} class="note-seen">
            {line}
          </p>
        ))}
        <p class="note-where">
          {zoneName(book, record.before.zone)}
          {controls.length === 0
            ? ''
            : ` · ${controls.map(([c, v]) => `${controlName(book, c)} ${valueName(book, c, v)}`).join(', ')}`}
        </p>
      </div>
    </li>
  );
}

/** Function and the two points of a reading. */
function readingOf({ model }: Session, { record }: Note): string | null {
  const { leads, instrument, dial, redJack } = record.after;
  if (record.seen.display === undefined || leads.red === null || leads.black === null) return null;
  const fn = instrument === 'lamp' ? wordFor('kinds', 'lamp') : wordFor('kinds', redJack === 'amps' ? 'amps' : dial);
  return `${fn}: ${t('clip.noteRead', { red: pointName(model, leads.red), black: pointName(model, leads.black) })}`;
}

function resultOf({ record }: Note): string | null {
  const { display } = record.seen;
  if (display === undefined) return null;
  if (record.after.instrument === 'lamp') return glowWord(display.text);
  const { text, unit, from, to, beep, least, most } = display;
  if (least !== undefined && most !== undefined) return `${text} ${unit}, ${t('meter.leastMost', { least, most })}`;
  const value = from !== undefined && to !== undefined ? `${from} … ${to} ${unit}` : `${text} ${unit}`;
  return beep === true ? `${value}, ${t('meter.beep')}` : value;
}

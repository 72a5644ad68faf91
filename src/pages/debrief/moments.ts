/** Steps of the attempt in words: when, what, and under which controls. */
import type { Action, Record } from '../../job/index.ts';
import { notesOf } from '../state/notebook.ts';
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { actionName } from '../words/actions.ts';
import { leadName } from '../words/leads.ts';
import { controlName, inText, pointName, valueName } from '../words/names.ts';
import { glowWord } from '../words/seen.ts';
import { sentence, t } from '../words/words.ts';

export function minuteOf({ attempt }: Session, entry: number): string {
  return minutes(attempt.records.slice(0, entry + 1).reduce((sum, r) => sum + r.cost.tenths, 0));
}

/** What was done; for a reading where the leads were, under which controls, and what showed. */
export function didText(session: Session, entry: number): string {
  const record = session.attempt.records[entry];
  if (record === undefined) return '';
  const { action } = record.entry;
  if (action.do === 'exchange') {
    const [part, other] = [action.part, action.with].map((id) => inText(session.book, id));
    return t('review.exchanged', { part, other });
  }
  if (action.do === 'lead') return leadText(session, record, action);
  const leads = leadsText(session, record);
  const did = sentence(actionName(session, action)).replace(/\.$/, '');
  if (leads === null) return did;
  const controls = controlsText(session, entry);
  const what = controls === '' ? leads : t('review.withControls', { what: leads, controls });
  const shown = t('review.shown', { what, shown: shownText(record) });
  // A handle that is moved while both leads are on changes the machine first, and is read then.
  return action.do === 'operate' ? `${did}. ${shown}` : shown;
}

function leadsText({ model }: Session, record: Record): string | null {
  const { red, black } = record.after.leads;
  if (record.seen.display === undefined || red === null || black === null) return null;
  const at = { red: pointName(model, red), black: pointName(model, black) };
  if (record.after.instrument === 'lamp') return t('review.lamp', at);
  return t('review.reading', { fn: t(`meter.${record.after.dial}`), ...at });
}

/** By the instrument that was in hand then. */
function leadText(session: Session, { after }: Record, { lead, point }: Extract<Action, { do: 'lead' }>): string {
  const where = point === null ? t('meter.loose') : t('meter.on', { point: pointName(session.model, point) });
  return `${sentence(leadName({ bench: after }, lead))} ${where}`;
}

function shownText({ seen, after }: Record): string {
  const { display } = seen;
  if (display === undefined) return '';
  if (after.instrument === 'lamp') return glowWord(display.text);
  const { text, unit, from, to } = display;
  return from !== undefined && to !== undefined ? `${from}…${to}\u00a0${unit}` : `${text}\u00a0${unit}`;
}

function controlsText(session: Session, entry: number): string {
  const note = notesOf(session).find((n) => n.index === entry);
  const { book } = session;
  return (note?.controls ?? [])
    .map(([id, value]) => `${controlName(book, id)}: ${valueName(book, id, value)}`)
    .join(', ');
}

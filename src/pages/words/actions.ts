/** Actions as a button says them, with what they cost. */
import { type Action, type Bench, costOf, exchangedWith, unattendedMinutes } from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { minutes, money } from '../state/settings.ts';
import { closingName, controlName, inText, pointName, targetName, valueName, wireEndName, zoneName } from './names.ts';
import { doneText } from './precautions.ts';
import { sentence, t, wordFor } from './words.ts';

/** As it stands to be done at this bench; for something done already, the bench before it. */
export function actionName(session: Session, action: Action, bench: Bench = session.bench): string {
  const { model, book } = session;
  switch (action.do) {
    case 'walk':
      return t('act.walk', { place: zoneName(book, action.zone) });
    case 'open':
      return t('act.open', { step: sentence(targetName(model, action.access)) });
    case 'close':
      return sentence(closingName(book, action.access));
    case 'helper':
      return action.call ? t('act.helperCall') : t('act.helperSend');
    case 'operate':
      return operateName(session, action.control, action.value);
    case 'look':
      return book.zones.some((z) => z.id === action.at)
        ? t('act.lookPlace')
        : t('act.look', { what: targetName(model, action.at) });
    case 'wiggle':
      return t('act.wiggle', { what: targetName(model, action.at) });
    case 'pull':
      return t('act.pull', { what: inText(book, action.part) });
    case 'refit':
      return t('act.refit', { what: inText(book, action.part) });
    case 'unplug':
      return t('act.unplug', { what: inText(book, action.connector) });
    case 'plug':
      return t('act.plug', { what: inText(book, action.connector) });
    case 'lift':
      return t('act.lift', { what: wireEndName(model, action.end) });
    case 'land':
      return t('act.land', { what: wireEndName(model, action.end) });
    case 'exchange': {
      const back = exchangedWith(bench, action.part, action.with) !== undefined;
      return t(back ? 'act.exchangeBack' : 'act.exchange', {
        part: inText(book, action.part),
        other: inText(book, action.with),
      });
    }
    case 'repair':
      return t('act.repair', { verb: wordFor('verbs', action.verb), what: targetName(model, action.target) });
    case 'codes':
      return t('act.codes');
    case 'clearCodes':
      return t('act.clearCodes');
    case 'verify':
      return t('act.verify');
    default:
      return moreNames(session, action);
  }
}

/** In the entry of a part, where it is plain what "it" is. */
export function shortName(session: Session, action: Action): string {
  const wire = (end: string): string => targetName(session.model, `W:${end.split('@')[0]}`);
  switch (action.do) {
    case 'look':
    case 'wiggle':
    case 'pull':
    case 'refit':
    case 'unplug':
    case 'plug':
      return t(`act.${action.do}It`);
    case 'lift':
    case 'land':
      return t(`act.${action.do}It`, { wire: wire(action.end) });
    case 'mark':
      return t(action.suspect ? 'act.markIt' : 'act.unmarkIt');
    case 'exchange': {
      const back = exchangedWith(session.bench, action.part, action.with) !== undefined;
      return back ? actionName(session, action) : t('act.exchangeIt', { other: inText(session.book, action.with) });
    }
    case 'repair':
      return wordFor('verbs', action.verb);
    default:
      return actionName(session, action);
  }
}

/** Actions that no list of offers has, as the debrief and the notebook name them. */
function moreNames({ model, job }: Session, action: Action): string {
  switch (action.do) {
    case 'start':
      return t('order.take');
    case 'ask':
      return job.asks.find((a) => a.id === action.question)?.question ?? action.question;
    case 'precaution':
      return precautionName(model, action.id, action.on);
    case 'instrument':
      return t('meter.take', { tool: action.take === 'meter' ? t('meter.title') : t('meter.lampTitle') });
    case 'dial':
      return `${t('meter.dial')}: ${t(`meter.${action.fn}`)}`;
    case 'jack':
      return `${t('meter.jack')} ${action.red === 'volts' ? t('meter.jackVolts') : t('meter.jackAmps')}`;
    case 'range':
      return t(action.to === null ? 'meter.rangeAuto' : 'meter.rangeKept');
    case 'zero':
    case 'minmax':
      return t(action.on ? `meter.${action.do}On` : `meter.${action.do}Off`);
    case 'renewFuse':
      return t('meter.renewFuse');
    case 'lead': {
      const lead = action.lead === 'red' ? t('meter.red') : t('meter.black');
      const where = action.point === null ? t('meter.loose') : t('meter.on', { point: pointName(model, action.point) });
      return `${lead} ${where}`;
    }
    case 'read':
      return t('act.read');
    case 'mark':
      return t(action.suspect ? 'act.mark' : 'act.unmark', { what: targetName(model, action.target) });
    case 'note':
      return action.text;
    case 'writeUp':
      return t('clip.writeUp');
    case 'finish':
      return t('write.finish', { ending: t(`write.${action.ending}`) });
    default:
      return action.do;
  }
}

function operateName({ book }: Session, control: string, value: string): string {
  const springs = book.controls.find((c) => c.id === control)?.springs?.[value];
  const words = { control: controlName(book, control), value: valueName(book, control, value) };
  return springs === undefined
    ? t('act.set', words)
    : t('act.setHeld', { ...words, back: valueName(book, control, springs) });
}

/** The same for an action and the one that undoes it, so that a button stays the same button. */
export function actionKey(action: Action): string {
  const pairs: Partial<Record<Action['do'], string>> = { close: 'open', refit: 'pull', plug: 'unplug', land: 'lift' };
  const { do: kind, ...rest } = action;
  return kind === 'helper' ? kind : `${pairs[kind] ?? kind} ${Object.values(rest).join(' ')}`;
}

export function costText({ book, bench }: Session, action: Action): string {
  const { tenths, price } = costOf(book, bench, action);
  const wait = unattendedMinutes(book, action);
  if (wait > 0) return t('act.costWait', { minutes: minutes(tenths), wait });
  if (price > 0) return t('act.costPrice', { minutes: minutes(tenths), price: money(price) });
  return tenths === 0 ? '' : t('act.cost', { minutes: minutes(tenths) });
}

/** A precaution put in place, or taken away again; without the full stop of its sentence. */
function precautionName(model: Session['model'], id: string, on: boolean): string {
  const done = doneText(model, id).replace(/\.$/, '');
  return on ? done : t('slip.precautionOff', { done });
}

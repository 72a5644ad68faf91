/** Codes of what was seen and heard, as sentences. */
import { inCab, type JobSpec, observablesOf, type Record } from '../../job/index.ts';
import type { Model } from '../../machine/index.ts';
import { inText } from './names.ts';
import { plain } from './plain.ts';
import { sentence, t } from './words.ts';

const PLAIN = [
  'clunk',
  'chatter',
  'stops',
  'complaint-stays',
  'complaint-gone',
  'complaint-other',
  'interlocks-hold',
  'jack-fuse-blown',
  'no-answer',
] as const;

/** What a proof came to: an answer, not something that happened. */
const VERDICT = /^(?:complaint-|interlock|lacks:)/;

/** Observables of an engine that is turned by its starter. */
const STARTING: readonly string[] = ['turns', 'turns-slowly'];

export function seenText(model: Model, job: JobSpec, code: string): string {
  const observable = model.book.observables.find((o) => o.code === code);
  if (observable !== undefined) return observable.text;
  const always = PLAIN.find((p) => p === code);
  if (always !== undefined) return t(`seen.${always}`);
  const [kind, rest] = [code.slice(0, code.indexOf(':')), code.slice(code.indexOf(':') + 1)];
  switch (kind) {
    case 'click':
      return sentence(t('seen.click', { what: inText(model.book, rest) }));
    case 'buzz':
      return sentence(t('seen.buzz', { what: inText(model.book, rest) }));
    case 'answer':
      return plain(model, job.asks.find((a) => a.id === rest)?.answer ?? '');
    case 'sign':
      return plain(model, job.signs[Number(rest)]?.text ?? '');
    case 'interlock-fails':
      return t('seen.interlockFails', { text: model.book.interlocks.find((i) => i.id === rest)?.text ?? rest });
    case 'lacks':
      return t('seen.lacks', { text: seenText(model, job, rest) });
    case 'shows':
      return t('seen.shows', { code: rest, text: codeText(model, rest) });
    case 'code':
      return t('seen.code', { code: rest, text: codeText(model, rest) });
    default:
      return code;
  }
}

export function codeText(model: Model, code: string): string {
  for (const part of model.book.parts) {
    const found = part.kind === 'controller' ? part.codes.find((c) => c.code === code) : undefined;
    if (found !== undefined) return found.text;
  }
  return code;
}

/** Actions that ask the machine something: that nothing came is an answer too. */
export const isAnswered = ({ seen, entry: { action } }: Record): boolean =>
  seen.codes.length > 0 || ['look', 'wiggle', 'codes'].includes(action.do);

/** All that an action showed, in sentences; says so where a look showed nothing. */
export function seenLines(model: Model, job: JobSpec, record: Record): string[] {
  const { do: kind } = record.entry.action;
  if (record.seen.codes.length > 0) return [...story(model, job, record), ...silentStart(model, record)];
  if (kind === 'look' || kind === 'wiggle') return [t('slip.nothing')];
  if (kind === 'codes') return [t('seen.noCodes')];
  return kind === 'operate' ? [t('seen.quiet')] : [];
}

/** A key turned to start that turns nothing says so: the lamps alone would read as if it had not been turned. */
function silentStart({ book }: Model, { entry: { action }, seen, after }: Record): string[] {
  const spec = action.do === 'operate' ? book.controls.find((c) => c.id === action.control) : undefined;
  const tried = action.do === 'operate' && spec?.starts === true && spec.springs?.[action.value] !== undefined;
  const turned = [...STARTING, 'runs', 'clunk', 'chatter'].some((code) => seen.codes.includes(code));
  return tried && !turned && inCab(book, after.zone) ? [t('seen.noCrank')] : [];
}

/**
 * An answer first, then in order of time: what happened, then what the machine shows; what was so only while a key was held is kept apart from what is
 * still so, since lamps go out when the engine runs.
 */
function story(model: Model, job: JobSpec, record: Record): string[] {
  const order = observablesOf(model).map(({ spec }) => spec.code);
  const say = (codes: readonly string[]): string[] =>
    codes.map((code) => seenText(model, job, code)).filter((line) => line !== '');
  const { codes } = record.seen;
  const shown = order.filter((code) => codes.includes(code));
  // An engine that runs turns by itself: what the starter did is over.
  const over = record.lasting.includes('runs') ? STARTING : [];
  const stays = (code: string): boolean => record.lasting.includes(code) && !over.includes(code);
  // A reading or a look tells what is so, not what has been.
  const tells = ['operate', 'verify'].includes(record.entry.action.do);
  const passed = say(shown.filter((code) => !stays(code) && (tells || !over.includes(code))));
  const lasting = say(shown.filter(stays));
  const others = codes.filter((code) => !order.includes(code));
  const happened = [
    ...say(others.filter((code) => VERDICT.test(code))),
    ...say(others.filter((code) => !VERDICT.test(code))),
  ];
  if (passed.length === 0 || lasting.length === 0) return [...happened, ...passed, ...lasting];
  return [...happened, t('seen.meanwhile', { text: passed.join(' ') }), t('seen.now', { text: lasting.join(' ') })];
}

export function displayLine(record: Record, name: (point: string) => string): string | null {
  const { display } = record.seen;
  const { red, black } = record.after.leads;
  if (display === undefined || red === null || black === null) return null;
  const leads = { red: name(red), black: name(black) };
  if (record.after.instrument === 'lamp') return t('slip.lamp', { text: glowWord(display.text), ...leads });
  const { text, unit, from, to, least, most } = display;
  if (least !== undefined && most !== undefined) return t('slip.minMax', { text, unit, least, most, ...leads });
  if (from !== undefined && to !== undefined) return t('slip.unsteady', { from, to, unit, ...leads });
  return t('slip.reading', { text, unit, ...leads });
}

const GLOWS = ['dark', 'glimmer', 'dim', 'bright'] as const;

export function glowWord(text: string): string {
  const glow = GLOWS.find((g) => g === text);
  return glow === undefined ? text : t(`meter.${glow}`);
}

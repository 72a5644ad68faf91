/** Codes of what was seen and heard, as sentences. */
import type { JobSpec, Record } from '../../job/index.ts';
import type { Model } from '../../machine/index.ts';
import { partName } from './names.ts';
import { t } from './words.ts';

const PLAIN = ['clunk', 'chatter', 'complaint-stays', 'complaint-gone', 'interlocks-hold', 'jack-fuse-blown'] as const;

export function seenText(model: Model, job: JobSpec, code: string): string {
  const observable = model.book.observables.find((o) => o.code === code);
  if (observable !== undefined) return observable.text;
  const plain = PLAIN.find((p) => p === code);
  if (plain !== undefined) return t(`seen.${plain}`);
  const [kind, rest] = [code.slice(0, code.indexOf(':')), code.slice(code.indexOf(':') + 1)];
  switch (kind) {
    case 'click':
      return t('seen.click', { what: partName(model.book, rest) });
    case 'buzz':
      return t('seen.buzz', { what: partName(model.book, rest) });
    case 'answer':
      return job.asks.find((a) => a.id === rest)?.answer ?? '';
    case 'sign':
      return job.signs[Number(rest)]?.text ?? '';
    case 'interlock-fails':
      return t('seen.interlockFails', { text: model.book.interlocks.find((i) => i.id === rest)?.text ?? rest });
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

/** All that an action showed, in sentences; says so where a look showed nothing. */
export function seenLines(model: Model, job: JobSpec, record: Record): string[] {
  const lines = record.seen.codes.map((code) => seenText(model, job, code)).filter((line) => line !== '');
  const { do: kind } = record.entry.action;
  if (lines.length > 0) return lines;
  if (kind === 'look' || kind === 'wiggle') return [t('slip.nothing')];
  if (kind === 'codes') return [t('seen.noCodes')];
  return kind === 'operate' ? [t('seen.quiet')] : [];
}

export function displayLine(record: Record, name: (point: string) => string): string | null {
  const { display } = record.seen;
  const { red, black } = record.after.leads;
  if (display === undefined || red === null || black === null) return null;
  const leads = { red: name(red), black: name(black) };
  if (record.after.instrument === 'lamp') return t('slip.lamp', { text: glowWord(display.text), ...leads });
  const { text, unit, from, to } = display;
  if (from !== undefined && to !== undefined) return t('slip.unsteady', { from, to, unit, ...leads });
  return t('slip.reading', { text, unit, ...leads });
}

const GLOWS = ['dark', 'glimmer', 'dim', 'bright'] as const;

export function glowWord(text: string): string {
  const glow = GLOWS.find((g) => g === text);
  return glow === undefined ? text : t(`meter.${glow}`);
}

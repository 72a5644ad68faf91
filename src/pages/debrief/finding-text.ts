/** A finding as a sentence that a student understands. */
import type { Finding } from '../../grading/index.ts';
import type { Session } from '../state/session.ts';
import { money } from '../state/settings.ts';
import { modeName, targetName } from '../words/names.ts';
import { t, wordFor } from '../words/words.ts';

export function findingText(session: Session, { code, params }: Finding): string {
  const text = (name: string): string => String(params[name] ?? '');
  const named = (name: string): string => (text(name) === '' ? '' : targetName(session.model, text(name)));
  return t(`finding.${code}`, {
    why: reason(session, text('check'), text('missing')),
    left: text('left'),
    before: text('before'),
    verb: wordFor('verbs', text('verb')),
    target: named('target'),
    sure: text('sure'),
    bill: money(Number(params.bill ?? 0)),
    par: money(Number(params.par ?? 0)),
    what: text('what')
      .split(' ')
      .filter((id) => id !== '')
      .map((id) => standing(session, id))
      .join('; '),
    cause: text('cause') === '' ? t('write.causeNone') : named('cause'),
    mode: modeName(text('mode')),
  });
}

/** Why a precaution matters, in the book's words; for opening a cover, the precautions themselves. */
function reason({ book }: Session, check: string, missing: string): string {
  const why = book.checks.find((c) => c.id === check)?.why;
  if (why !== undefined) return why;
  return missing
    .split(' ')
    .map((id) => book.precautions.find((p) => p.id === id)?.text ?? id)
    .join(' ');
}

const standing = ({ book, model }: Session, id: string): string =>
  book.precautions.find((p) => p.id === id)?.done.replace(/\.$/, '') ?? targetName(model, id);

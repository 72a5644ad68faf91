/** Why something could not be done, in words, and the one action that would clear the way. */
import { type Action, isOpen, type Refusal } from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { targetName } from './names.ts';
import { doneText } from './precautions.ts';
import { sealText } from './sealed.ts';
import { sentence, t } from './words.ts';

export function refusalText(session: Session, { code, what }: Refusal): string {
  if (code === 'not-probeable' && what === 'leads') return t('refusal.leads');
  if (code === 'unknown' && what === 'off') return t('refusal.dialOff');
  if (code === 'unknown' && ['range', 'zero', 'minmax'].includes(what)) return t('refusal.button');
  if (code === 'must-be-parted') return sealText(session, what);
  if (code === 'untrue') return t('refusal.untrue', { what: doneText(session.model, what) });
  return sentence(t(`refusal.${code}`, { what: targetName(session.model, what) }));
}

/** What can be done about it at once, from where the student is; null when it takes more than one step. */
export function remedyFor(session: Session, { code, what }: Refusal): Action | null {
  const action = proposal(session, { code, what });
  return action !== null && session.attempt.refusal(action) === null ? action : null;
}

function proposal({ book, bench }: Session, { code, what }: Refusal): Action | null {
  switch (code) {
    case 'not-here':
      return book.zones.some((z) => z.id === what) ? { do: 'walk', zone: what } : null;
    case 'covered':
      return isOpen(book, bench, what) ? null : { do: 'open', access: what };
    case 'must-be-parted':
      return { do: 'unplug', connector: what };
    case 'needs-helper':
    case 'nobody-there':
      return { do: 'helper', call: true };
    case 'seat-up':
      return { do: 'close', access: what };
    default:
      return null;
  }
}

/** After work on the machine the proof is due: it stands at the head of the cab's list until it has been tried. */
import { inCab } from '../../job/index.ts';
import { ActButton } from '../parts/act-button.tsx';
import type { Session } from '../state/session.ts';
import { provedSinceWork, workedSinceArrival } from '../state/still-open.ts';
import { t } from '../words/words.ts';
import { VerifyLine } from './verify-line.tsx';

export const proofIsDue = (session: Session): boolean =>
  inCab(session.book, session.bench.zone) && workedSinceArrival(session) && !provedSinceWork(session);

export function ProofDue({ session }: { session: Session }) {
  return (
    <div class="proof-due">
      <p>{t('here.proofDue')}</p>
      <ActButton session={session} action={{ do: 'verify' }} label={t('here.proveNow')} kind="work" />
      <VerifyLine session={session} id="proof-due-line" />
    </div>
  );
}

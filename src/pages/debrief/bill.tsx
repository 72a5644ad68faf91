/** What was on the bill, beside the bill of the sound way. */
import type { Grade } from '../../grading/index.ts';
import type { Session } from '../state/session.ts';
import { labourStep, minutes, money } from '../state/settings.ts';
import { targetName } from '../words/names.ts';
import { t, wordFor } from '../words/words.ts';
import { billOfWay, type SoundBill } from './sound-way.ts';

interface Props {
  session: Session;
  grade: Grade;
  sound: SoundBill | null;
}

export function Bill({ session, grade, sound }: Props) {
  const yours = billOfWay(session.attempt);
  const row = (name: string, value: string, other: string | null) => (
    <tr>
      <th scope="row">{name}</th>
      <td>{value}</td>
      <td>{other ?? t('review.bill.wait')}</td>
    </tr>
  );
  const late = (value: (bill: SoundBill) => string): string | null => (sound === null ? null : value(sound));
  return (
    <section aria-labelledby="debrief-bill">
      <h2 id="debrief-bill">{t('review.bill.title')}</h2>
      <table class="bill">
        <thead>
          <tr>
            <th scope="col">{t('review.bill.item')}</th>
            <th scope="col">{t('review.bill.yours')}</th>
            <th scope="col">{t('review.bill.sound')}</th>
          </tr>
        </thead>
        <tbody>
          {row(
            t('review.bill.minutes'),
            minutes(yours.tenths),
            late((b) => minutes(b.tenths)),
          )}
          {row(
            t('review.bill.labor', { minutes: labourStep(session.book).minutes }),
            money(grade.bill - yours.price),
            late((b) => money(grade.par - b.price)),
          )}
          <tr>
            <th scope="row">{t('review.bill.parts')}</th>
            <td>
              <WorkList session={session} bill={yours} />
            </td>
            <td>{sound === null ? t('review.bill.wait') : <WorkList session={session} bill={sound} />}</td>
          </tr>
        </tbody>
        <tfoot>{row(t('review.bill.total'), money(grade.bill), money(grade.par))}</tfoot>
      </table>
    </section>
  );
}

function WorkList({ session, bill }: { session: Session; bill: SoundBill }) {
  if (bill.work.length === 0 && bill.meterFuses === 0) return <>{t('review.bill.none')}</>;
  return (
    <>
      {bill.work.map(({ verb, target, price }, i) => (
        <span key={`${i}${target}`} class="bill-work">
          {t('review.bill.work', { verb: wordFor('verbs', verb), what: targetName(session.model, target) })}{' '}
          <span class="bill-price">{money(price)}</span>
        </span>
      ))}
      {bill.meterFuses === 0 ? null : (
        <span class="bill-work">
          {t('review.bill.meterFuses')} <span class="bill-price">{money(bill.meterFuses)}</span>
        </span>
      )}
    </>
  );
}

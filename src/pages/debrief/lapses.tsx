/** Precautions that were not in place when they were needed, with the reason. */
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { actionName } from '../words/actions.ts';
import { t } from '../words/words.ts';

export function Lapses({ session }: { session: Session }) {
  const { attempt, book } = session;
  let tenths = 0;
  const rows = attempt.records.flatMap((record) => {
    tenths += record.cost.tenths;
    const minute = minutes(tenths);
    return record.lapses.map((lapse) => {
      const missing = lapse.missing.map((id) => book.precautions.find((p) => p.id === id)?.text ?? id);
      const why = book.checks.find((c) => c.id === lapse.check)?.why ?? missing.join(' ');
      return {
        key: `${record.entry.index}${lapse.check}`,
        minute,
        what: actionName(session, record.entry.action),
        why,
        critical: lapse.critical,
      };
    });
  });
  return (
    <section aria-labelledby="debrief-safety">
      <h2 id="debrief-safety">{t('debrief.safety')}</h2>
      {rows.length === 0 ? <p class="all-clear">{t('debrief.safetyNone')}</p> : null}
      <ul class="lapses">
        {rows.map(({ key, minute, what, why, critical }) => (
          <li key={key} class={critical ? 'critical' : ''}>
            <span class="note-minute">{t('debrief.step', { minute })}</span> {what}: {why}{' '}
            {critical ? <b>({t('debrief.critical')})</b> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

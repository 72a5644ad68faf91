/** What the drawing shows lit, blown or running, and what is heard, in words. */
import { noticed } from '../../job/index.ts';
import { Section } from '../parts/section.tsx';
import { blownFuses, lampsOf } from '../state/machine-view.ts';
import type { Session } from '../state/session.ts';
import { partName } from '../words/names.ts';
import { seenText } from '../words/seen.ts';
import { t } from '../words/words.ts';
import { clusterLines } from './cluster-lines.ts';

export function SeenNow({ session }: { session: Session }) {
  const lines = linesNow(session);
  return (
    <Section id="here-seen" title={t('here.seen')}>
      {lines.length === 0 ? <p class="hint">{t('here.seenNone')}</p> : null}
      <ul class="seen-now">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Section>
  );
}

function linesNow(session: Session): string[] {
  const { model, job, book, bench, attempt } = session;
  const lit = Object.entries(lampsOf(session)).flatMap(([lamp, on]) => (on ? [lamp.split('.')[0] ?? lamp] : []));
  const lamps = book.parts.filter((p) => p.zone === bench.zone && lit.includes(p.id));
  return [
    ...noticed(attempt.rig.world, bench.zone).map((code) => seenText(model, job, code)),
    ...lamps.map((p) => t('here.lit', { what: partName(book, p.id) })),
    ...blownFuses(session).map((id) => t('here.blown', { what: partName(book, id) })),
    ...clusterLines(session),
  ];
}

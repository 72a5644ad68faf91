/** The cluster and the hour meter in words: what is dark as well as what is lit, as the drawing has it. */
import { clusterOf, tellTalesOf } from '../state/machine-view.ts';
import type { Session } from '../state/session.ts';
import { t } from '../words/words.ts';

/** Lit lamps and codes are said with everything else that is noticed. */
export function clusterLines(session: Session): string[] {
  const { book, bench, job } = session;
  const { cluster } = book;
  if (cluster === undefined || !cluster.zones.includes(bench.zone)) return [];
  const dark = tellTalesOf(session).filter((lamp) => !lamp.lit);
  const isHere = book.parts.some((p) => p.id === cluster.hourMeter && p.zone === bench.zone);
  return [
    ...(dark.length === 0 ? [] : [t('here.darkLamps', { names: dark.map((lamp) => lamp.name).join(', ') })]),
    ...displayLines(session),
    ...(isHere ? [t('here.hours', { hours: job.workOrder.hours.toFixed(1) })] : []),
  ];
}

function displayLines(session: Session): string[] {
  const display = clusterOf(session);
  if (display === null) return [t('here.displayDark')];
  const { codes, needles, rpm } = display;
  const gauges = (session.book.cluster?.gauges ?? []).map(({ id, name }) => {
    const share = needles[id];
    return share === undefined
      ? t('here.gaugeRests', { name })
      : t('here.gauge', { name, share: Math.round(share * 100) });
  });
  return [
    ...(codes.length === 0 ? [t('here.noCode')] : []),
    rpm === null ? t('here.noSpeed') : t('here.speed', { rpm }),
    ...gauges,
  ];
}

/** One point that takes a probe, with the two leads. */
import type { Lead } from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { bareName, pointName } from '../words/names.ts';
import { t } from '../words/words.ts';

export function PointRow({ session, point }: { session: Session; point: string }) {
  const { model, bench } = session;
  const name = pointName(model, point);
  const bare = point.includes('@') ? name : bareName(model, point);
  const wire = name.slice(bare.length).replace(/^, /, '');
  const button = (lead: Lead) => {
    const on = bench.leads[lead] === point;
    const spoken = on ? t(`act.${lead}Off`, { point: name }) : t(`act.${lead}Here`, { point: name });
    return (
      <button
        type="button"
        class={`lead lead-${lead}`}
        aria-pressed={on}
        aria-label={spoken}
        data-lead={lead}
        onClick={() => session.act({ do: 'lead', lead, point: on ? null : point })}
      >
        {leadWord(session, lead)}
      </button>
    );
  };
  return (
    <li class="point-row" data-rowbox data-point={point}>
      <span class="point-name">
        <b>{bare}</b>
        {wire === '' ? null : <span class="point-wire">{wire}</span>}
      </span>
      {button('red')}
      {button('black')}
    </li>
  );
}

export function leadWord({ bench }: Session, lead: Lead): string {
  if (bench.instrument === 'lamp') return lead === 'red' ? t('act.tip') : t('act.clip');
  return lead === 'red' ? t('act.red') : t('act.black');
}

/** One point that takes a probe, with the two leads. */
import type { Lead } from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { leadName, leadWord } from '../words/leads.ts';
import { bareName, localName, pointName, wiresText } from '../words/names.ts';
import { sentence, t } from '../words/words.ts';

interface Props {
  session: Session;
  point: string;
  /** In the entry of its part, which has the part's name already. */
  within?: boolean;
}

export function PointRow({ session, point, within = false }: Props) {
  const { model, bench } = session;
  const name = pointName(model, point);
  const isLoose = point.includes('@');
  const bare = isLoose ? name : within ? localName(model, point) : bareName(model, point);
  const wire = isLoose ? '' : wiresText(model, point);
  const button = (lead: Lead) => {
    const on = bench.leads[lead] === point;
    const spoken = t(on ? 'act.leadOff' : 'act.leadHere', { point: name, lead: leadName(session, lead) });
    return (
      <button
        type="button"
        class={`lead lead-${lead}`}
        aria-pressed={on}
        aria-label={sentence(spoken)}
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
        <b>{sentence(bare)}</b>
        {wire === '' ? null : <span class="point-wire">{wire}</span>}
      </span>
      {button('red')}
      {button('black')}
    </li>
  );
}

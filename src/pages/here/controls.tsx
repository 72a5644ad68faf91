/** Handles and switches in reach, with what each can be set to. */
import { useRef } from 'preact/hooks';
import { useArrows } from '../parts/arrows.ts';
import { Section } from '../parts/section.tsx';
import type { Session } from '../state/session.ts';
import { actionName } from '../words/actions.ts';
import { controlName, valueName } from '../words/names.ts';
import { t } from '../words/words.ts';
import { type ControlOffer, controlsHere } from './offers.ts';

export function Controls({ session }: { session: Session }) {
  const offers = controlsHere(session);
  if (offers.length === 0) return null;
  return (
    <Section id="here-controls" title={offers.some((o) => o.byHelper) ? t('here.helperCab') : t('here.controls')}>
      <ControlList session={session} offers={offers} />
    </Section>
  );
}

function ControlList({ session, offers }: { session: Session; offers: ControlOffer[] }) {
  const ref = useRef<HTMLUListElement>(null);
  useArrows(ref);
  return (
    <ul class="controls" ref={ref}>
      {offers.map((offer) => (
        <ControlRow key={offer.control} session={session} offer={offer} />
      ))}
    </ul>
  );
}

function ControlRow({ session, offer }: { session: Session; offer: ControlOffer }) {
  const { book } = session;
  const { control, value, values } = offer;
  return (
    <li class="control-row" data-rowbox>
      <b class="control-name">{controlName(book, control)}</b>
      <span class="control-values">
        {values.map((to) => (
          <button
            key={to}
            type="button"
            class="value"
            aria-pressed={to === value}
            aria-label={spoken(session, offer, to)}
            onClick={() => {
              if (to !== value) session.act({ do: 'operate', control, value: to });
            }}
          >
            {valueName(book, control, to)}
          </button>
        ))}
      </span>
    </li>
  );
}

function spoken(session: Session, { control, byHelper }: ControlOffer, value: string): string {
  const { book } = session;
  if (byHelper)
    return t('act.helperSet', { control: controlName(book, control), value: valueName(book, control, value) });
  return actionName(session, { do: 'operate', control, value });
}

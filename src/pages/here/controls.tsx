/** Handles and switches in reach, with what each can be set to. */
import { useRef } from 'preact/hooks';
import { useArrows } from '../parts/arrows.ts';
import { Section } from '../parts/section.tsx';
import type { Session } from '../state/session.ts';
import { actionName, costText } from '../words/actions.ts';
import { controlName, valueName } from '../words/names.ts';
import { t } from '../words/words.ts';
import { LapsedLines } from './lapsed-lines.tsx';
import { type ControlOffer, controlsHere } from './offers.ts';

export function Controls({ session }: { session: Session }) {
  const offers = controlsHere(session);
  if (offers.length === 0) return null;
  const own = offers.filter((o) => !o.byHelper);
  const byHelper = offers.filter((o) => o.byHelper);
  // Whoever is led to the controls comes to the first of the two.
  const second = own.length === 0 ? 'here-controls' : 'here-helper';
  return (
    <>
      {own.length === 0 ? null : (
        <Section id="here-controls" title={t('here.controls')}>
          {byHelper.length === 0 ? <LapsedLines session={session} /> : null}
          <ReadingCost session={session} />
          <ControlList session={session} offers={own} />
        </Section>
      )}
      {byHelper.length === 0 ? null : (
        <Section id={second} title={t('here.helperCab')}>
          {/* The key is the helper's then: what lapsed is said there, and once. */}
          <LapsedLines session={session} />
          <ReadingCost session={session} />
          <ControlList session={session} offers={byHelper} />
        </Section>
      )}
    </>
  );
}

/** With both leads on, whatever is set is read at the same moment, and paid as a reading. */
function ReadingCost({ session }: { session: Session }) {
  const { red, black } = session.bench.leads;
  if (red === null || black === null) return null;
  const [first] = session.book.controls;
  if (first === undefined) return null;
  const cost = costText(session, { do: 'operate', control: first.id, value: first.initial });
  return <p class="hint reading-cost">{t('here.withReading', { cost })}</p>;
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

/** The two leads: in hand, on a point, or loose. Dragged to the drawing, or taken in hand and set with a click or key. */
import { useRef } from 'preact/hooks';
import type { Lead } from '../../job/index.ts';
import { hovered, missPoint, touchPoint } from '../shop/stage-events.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { takeLead, ui } from '../state/ui.ts';
import { leadName, leadWord } from '../words/leads.ts';
import { bareName, pointName } from '../words/names.ts';
import { sentence, t } from '../words/words.ts';

/** One below the other, or side by side where there is little room. */
export function Leads({ session, side }: { session: Session; side: boolean }) {
  return (
    <ul class={side ? 'leads leads-side' : 'leads'}>
      <LeadRow session={session} lead="red" />
      <LeadRow session={session} lead="black" />
    </ul>
  );
}

function LeadRow({ session, lead }: { session: Session; lead: Lead }) {
  const { leadInHand } = useObservable(ui);
  const pointed = useRef(false);
  const forget = (): void => {
    pointed.current = false;
  };
  const point = session.bench.leads[lead];
  const inHand = leadInHand === lead;
  const where = inHand
    ? t('meter.inHand')
    : point === null
      ? t('meter.loose')
      : t('meter.on', { point: shortPoint(session, point) });
  return (
    <li>
      <button
        type="button"
        class={`probe probe-${lead}`}
        aria-pressed={inHand}
        aria-label={`${leadWord(session, lead)} ${where}. ${t('meter.takeLead', { lead: leadName(session, lead) })}`}
        title={point === null ? undefined : pointName(session.model, point)}
        onPointerDown={(event) => {
          pointed.current = true;
          // The click of a tap comes before this; after a drag there is none.
          addEventListener('pointerup', () => setTimeout(forget), { once: true });
          drag(session, lead, event);
        }}
        onClick={() => {
          // A pointer has been dealt with when it went up; keys and screen readers send the click alone.
          if (!pointed.current) toggle(lead);
        }}
      >
        <b>{leadWord(session, lead)}</b> <span>{where}</span>
      </button>
      {point === null ? null : (
        <button
          type="button"
          class="plain"
          aria-label={`${sentence(leadName(session, lead))}: ${t('meter.takeOff')}`}
          onClick={() => session.act({ do: 'lead', lead, point: null })}
        >
          ✕
        </button>
      )}
    </li>
  );
}

/** The wire stands on the slip; here is room for the place only. */
const shortPoint = ({ model }: Session, point: string): string =>
  point.includes('@') ? pointName(model, point) : bareName(model, point);

export function toggle(lead: Lead): void {
  takeLead(ui.value.leadInHand === lead ? null : lead);
}

/** A mouse carries the lead along and drops it; a tap only takes it in hand. */
function drag(session: Session, lead: Lead, event: PointerEvent): void {
  if (event.button !== 0) return;
  const had = ui.value.leadInHand === lead;
  const [x, y] = [event.clientX, event.clientY];
  takeLead(lead);
  const drop = (up: PointerEvent): void => {
    const still = Math.hypot(up.clientX - x, up.clientY - y) < 8;
    if (still) {
      if (had) takeLead(null);
      return;
    }
    if (!(up.target instanceof Element) || up.target.closest('.stage') === null) return;
    const point = hovered.value?.point;
    if (point === undefined) missPoint();
    else touchPoint(session, point);
  };
  addEventListener('pointerup', drop, { once: true });
}

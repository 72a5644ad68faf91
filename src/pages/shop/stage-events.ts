/** What pointing at the drawing means. */
import type { StageEvents } from '../../game/view.ts';
import { isOpen, ownerOf } from '../../job/index.ts';
import { moveOn } from '../state/move-on.ts';
import { Observable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { takeLead, ui } from '../state/ui.ts';

/** On a narrow screen the list would hide the drawing that was touched; the slip says what it was, pixels. */
const NARROW = 900;

export type Hovered = Parameters<StageEvents['onHover']>[0];

/** What the pointer is over, for its name and for dropping a lead there. */
export const hovered = new Observable<Hovered>(null);

/** Counts how often the drawing was laid out, for what must keep clear of its points. */
export const laid = new Observable(0);

export function stageEvents(session: Session): StageEvents {
  return {
    onPoint: (point) => touchPoint(session, point),
    onZone: (zone) => enter(session, zone),
    onControl: (control, value) => {
      // The drawing tells the spring's way back too; the machine has gone it by itself.
      if (session.attempt.rig.world.controlOf(control) !== value) session.act({ do: 'operate', control, value });
    },
    onPart: (part) => select(session, part),
    onMiss: missPoint,
    onHover: (what) => hovered.set(what),
    onLaid: () => laid.set(laid.value + 1),
  };
}

/** With a lead in hand it goes there; without, the point's entry in the list is shown. */
export function touchPoint(session: Session, point: string): void {
  const { leadInHand } = ui.value;
  if (leadInHand === null) {
    select(session, ownerOf(session.model, point));
    ui.update({ point });
    return;
  }
  const result = session.act({ do: 'lead', lead: leadInHand, point });
  if (!('code' in result)) takeLead(null);
}

/** The lead stays in hand: it is drawn where the pointer is, so that it must be said that it touches nothing. */
export function missPoint(): void {
  ui.update({ missed: ui.value.missed + 1 });
}

function select(session: Session, part: string): void {
  if (part !== ui.value.selected) moveOn(session);
  const picks = ui.value.picks + 1;
  ui.update({
    selected: part,
    picks,
    point: null,
    here: ui.value.here || innerWidth > NARROW || innerHeight > innerWidth,
  });
}

/** A place that is drawn: to walk there, or here to open what closes it. */
function enter(session: Session, zone: string): void {
  const { book, bench } = session;
  if (zone !== bench.zone) {
    session.act({ do: 'walk', zone });
    ui.update({ aside: null });
    return;
  }
  ui.update({ aside: null });
  const access = book.zones.find((z) => z.id === zone)?.access;
  // A cover takes minutes, so that a touch only asks.
  if (access !== undefined && !isOpen(book, bench, access))
    session.refuse({ do: 'look', at: zone }, { code: 'covered', what: access });
}

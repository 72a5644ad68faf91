/** What is over again when an action ends but was there to be seen: the key held at start, the engine that turned. */
import type { Record } from '../../job/index.ts';
import { Observable } from './observable.ts';
import type { Session } from './session.ts';

export interface Moment {
  controls: globalThis.Record<string, string>;
  cranking: boolean;
}

export const moment = new Observable<Moment | null>(null);

/** As long as a held control is shown held, ms of wall time. */
const SHOWN_MS = 1800;
let ending: ReturnType<typeof setTimeout> | undefined;

export function watchMoments(session: Session): () => void {
  return session.onRecord((record) => {
    const held = heldControl(session, record);
    if (held === null) return;
    clearTimeout(ending);
    moment.set({ controls: held, cranking: record.seen.codes.includes('turns') });
    ending = setTimeout(() => moment.set(null), SHOWN_MS);
  });
}

function heldControl({ book }: Session, { entry }: Record): globalThis.Record<string, string> | null {
  const { action } = entry;
  if (action.do !== 'operate') return null;
  const springs = book.controls.find((c) => c.id === action.control)?.springs?.[action.value];
  return springs === undefined ? null : { [action.control]: action.value };
}

/** Whoever turns to another part or looks at another place is done with what stood on the slip. */
import type { Session } from './session.ts';
import { type Ui, ui } from './ui.ts';

export function moveOn(session: Session): void {
  ui.update({ point: null });
  session.clearOutcome();
}

/** Looks at the whole machine, at the back of the panel, or back at the place, without walking. */
export function lookAt(session: Session, aside: Ui['aside']): void {
  ui.update({ aside, selected: null });
  moveOn(session);
}

/** The stage's view of an attempt: where one stands, what is open and off, what can be seen. */
import type { StageView } from '../../game/view.ts';
import { blownFuses, controlsOf, isRunning, lampsOf, readoutsOf } from '../state/machine-view.ts';
import { moment } from '../state/moment.ts';
import type { Session } from '../state/session.ts';
import { isDark, isStill, settings } from '../state/settings.ts';
import type { Ui } from '../state/ui.ts';

export function stageView(session: Session, ui: Ui): StageView {
  const { bench } = session;
  const now = moment.value;
  return {
    place: ui.aside ?? bench.zone,
    opened: bench.opened,
    pulled: bench.pulled,
    unplugged: bench.unplugged,
    lifted: bench.lifted,
    blown: blownFuses(session),
    controls: { ...controlsOf(session), ...now?.controls },
    lamps: lampsOf(session),
    chocks: bench.precautions.includes('chocks'),
    cranking: now?.cranking ?? false,
    running: isRunning(session),
    leads: bench.leads,
    leadInHand: ui.leadInHand,
    theme: isDark(settings.value) ? 'dark' : 'light',
    reducedMotion: isStill(settings.value),
    readouts: readoutsOf(session),
  };
}

/** A button that does one action and says what it costs. */
import type { Action } from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { actionName, costText, shortName } from '../words/actions.ts';

interface Props {
  session: Session;
  action: Action;
  label?: string;
  /** Says "it" for what the entry is about; the spoken name stays whole. */
  short?: boolean;
  kind?: 'plain' | 'work' | 'repair';
  onDone?: () => void;
  /** Id of a line that says more about it. */
  describedBy?: string | undefined;
}

export function ActButton({ session, action, label, short = false, kind = 'plain', onDone, describedBy }: Props) {
  const whole = label ?? actionName(session, action);
  const name = short ? shortName(session, action) : whole;
  const cost = costText(session, action);
  const press = (): void => {
    session.act(action);
    onDone?.();
  };
  return (
    <button
      type="button"
      class={`act act-${kind}`}
      {...(short ? { 'aria-label': cost === '' ? whole : `${whole}, ${cost}` } : {})}
      aria-describedby={describedBy}
      onClick={press}
    >
      <span class="act-name">{name}</span>
      {cost === '' ? null : <span class="act-cost">{cost}</span>}
    </button>
  );
}

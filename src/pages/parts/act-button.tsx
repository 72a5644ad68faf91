/** A button that does one action and says what it costs. */
import type { Action } from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { actionName, costText, shortName } from '../words/actions.ts';

interface Props {
  session: Session;
  action: Action;
  label?: string;
  /** What is printed on it where the spoken name says more. */
  face?: string;
  /** Says "it" for what the entry is about; the spoken name stays whole. */
  short?: boolean;
  kind?: 'plain' | 'work' | 'repair';
  onDone?: () => void;
  /** Id of a line that says more about it. */
  describedBy?: string | undefined;
}

export function ActButton({ session, action, label, face, short = false, kind = 'plain', onDone, describedBy }: Props) {
  const whole = label ?? actionName(session, action);
  const name = face ?? (short ? shortName(session, action) : whole);
  const cost = costText(session, action);
  const press = (): void => {
    session.act(action);
    onDone?.();
  };
  return (
    <button
      type="button"
      class={`act act-${kind}`}
      {...(short || face !== undefined ? { 'aria-label': cost === '' ? whole : `${whole}, ${cost}` } : {})}
      aria-describedby={describedBy}
      onClick={press}
    >
      <span class="act-name">{name}</span>
      {cost === '' ? null : <span class="act-cost">{cost}</span>}
    </button>
  );
}

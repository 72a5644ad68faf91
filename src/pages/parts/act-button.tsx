/** A button that does one action and says what it costs. */
import type { Action } from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { actionName, costText } from '../words/actions.ts';

interface Props {
  session: Session;
  action: Action;
  label?: string;
  kind?: 'plain' | 'work' | 'repair';
  onDone?: () => void;
}

export function ActButton({ session, action, label, kind = 'plain', onDone }: Props) {
  const name = label ?? actionName(session, action);
  const cost = costText(session, action);
  const press = (): void => {
    session.act(action);
    onDone?.();
  };
  return (
    <button type="button" class={`act act-${kind}`} data-row onClick={press}>
      <span class="act-name">{name}</span>
      {cost === '' ? null : <span class="act-cost">{cost}</span>}
    </button>
  );
}

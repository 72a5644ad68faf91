/** The phases of an attempt as a statechart: handed the work order, at work, written up, ended. */
import { getNextSnapshot, setup } from 'xstate';
import type { Action } from './action.ts';

type PhaseEvent = { type: 'BEGIN' } | { type: 'ACT' } | { type: 'WRITE_UP' } | { type: 'FINISH' };

export const phaseMachine = setup({ types: { events: {} as PhaseEvent } }).createMachine({
  id: 'attempt',
  initial: 'briefed',
  states: {
    briefed: { on: { BEGIN: 'working' } },
    working: { on: { ACT: 'working', WRITE_UP: 'writtenUp', FINISH: 'ended' } },
    // Work after the write-up is allowed; the write-up can be made again.
    writtenUp: { on: { ACT: 'writtenUp', WRITE_UP: 'writtenUp', FINISH: 'ended' } },
    ended: { type: 'final' },
  },
});

export type Phase = 'briefed' | 'working' | 'writtenUp' | 'ended';

function eventOf(action: Action): PhaseEvent {
  if (action.do === 'start') return { type: 'BEGIN' };
  if (action.do === 'writeUp') return { type: 'WRITE_UP' };
  return { type: action.do === 'finish' ? 'FINISH' : 'ACT' };
}

/** The phase after an action; null where the action has no place in this phase. */
export function nextPhase(phase: Phase, action: Action): Phase | null {
  const snapshot = phaseMachine.resolveState({ value: phase });
  const event = eventOf(action);
  if (!snapshot.can(event)) return null;
  return getNextSnapshot(phaseMachine, snapshot, event).value as Phase;
}

/** Keys of the shop screen. Letters work only while no text is typed, and can be turned off. */

import { toggle } from '../meter/leads.tsx';
import { lookAt } from '../state/move-on.ts';
import type { Session } from '../state/session.ts';
import { settings } from '../state/settings.ts';
import { toggleSheet } from '../state/sheets.ts';
import { CLIP_TABS, closeSheet, takeLead, ui } from '../state/ui.ts';
import { onStage } from './stage-pane.tsx';

export function listenForKeys(session: Session): () => void {
  const onKey = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || ui.value.dialog !== null) return;
    if (event.key === 'Escape') {
      putAway();
      return;
    }
    if (!settings.value.letterKeys || isTyping(event.target)) return;
    if (press(session, event)) event.preventDefault();
  };
  addEventListener('keydown', onKey);
  return () => removeEventListener('keydown', onKey);
}

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;

/** One thing a press: the lead in hand first, then what lies on top. */
function putAway(): void {
  const { leadInHand, manual, clip, sheet } = ui.value;
  if (leadInHand !== null) takeLead(null);
  else if (manual) ui.update({ manual: false });
  else if (clip !== null) ui.update({ clip: null });
  else if (sheet !== null) closeSheet();
}

function press(session: Session, event: KeyboardEvent): boolean {
  const now = ui.value;
  const key = event.key.toLowerCase();
  const tab = CLIP_TABS[Number(key) - 1];
  if (tab !== undefined) {
    ui.update({ clip: tab, clipLast: tab, manual: false });
    return focusSoon('clipboard-title');
  }
  switch (key) {
    case 'h':
    case 'f':
    case 'w':
    case 'k':
    case 'g':
      ui.update({ here: true });
      return toList(IN_LIST[key]);
    case 'l':
      return focusSoon('slip');
    case 's':
      toggleSheet();
      return true;
    case 'c':
      ui.update({ clip: now.clip === null ? now.clipLast : null, manual: false });
      return now.clip === null ? focusSoon('clipboard-title') : true;
    case 'm':
      ui.update({ manual: !now.manual, clip: null });
      return now.manual ? true : focusSoon('manual-search');
    case 'i':
      ui.update({ toolHeld: true });
      return focusSoon('tool');
    case 'e':
      session.act({ do: 'read' });
      return true;
    case 'r':
    case 'b':
      return lead(key === 'r' ? 'red' : 'black', event.target);
    case 'y':
      lookAt(session, now.aside === null ? 'YARD' : null);
      return true;
    case '?':
      ui.update({ dialog: 'help' });
      return true;
    case '+':
    case '-':
    case '0':
      onStage.current?.zoom(key === '+' ? 1 : key === '-' ? -1 : 0);
      return true;
    default:
      return false;
  }
}

/** Parts of the list that a key leads to. */
const IN_LIST = { h: 'here-title', f: 'here-filter', w: 'here-go', k: 'here-controls', g: 'here-general' } as const;

/** A part that is folded up is opened; where there is none the list itself has the focus. */
function toList(id: string): boolean {
  requestAnimationFrame(() => {
    const there = document.getElementById(id) ?? document.getElementById('here-title');
    there?.focus();
    if (there?.getAttribute('aria-expanded') === 'false') there.click();
  });
  return true;
}

/** On a point of the list the lead goes there at once; elsewhere it is taken in hand. */
function lead(which: 'red' | 'black', target: EventTarget | null): boolean {
  const row = target instanceof Element ? target.closest('[data-point]') : null;
  const button = row?.querySelector<HTMLButtonElement>(`[data-lead="${which}"]`);
  if (button) button.click();
  else toggle(which);
  return true;
}

/** Frames to wait for a panel whose code is still on its way. */
const MOST_FRAMES = 120;

function focusSoon(id: string, frames = MOST_FRAMES): boolean {
  requestAnimationFrame(() => {
    const there = document.getElementById(id);
    if (there !== null) there.focus();
    else if (frames > 0) focusSoon(id, frames - 1);
  });
  return true;
}

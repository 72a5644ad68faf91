/** What is open on the shop screen, and what is in hand. Nothing of it is part of the attempt. */
import type { Lead } from '../../job/index.ts';
import { Observable } from './observable.ts';

export type ClipTab = 'order' | 'notes' | 'suspects' | 'safety' | 'operator' | 'writeUp';
export const CLIP_TABS: readonly ClipTab[] = ['order', 'notes', 'suspects', 'safety', 'operator', 'writeUp'];

export interface Ui {
  here: boolean;
  /** The list was put away to make room for the schematic, and comes back with its end. */
  hereAside: boolean;
  /** Sheet of the schematic beside the stage. */
  sheet: string | null;
  /** Sheet that the schematic was last open at. */
  sheetLast: string | null;
  /** Part of the stage's width that the place keeps beside the sheet. */
  split: number;
  clip: ClipTab | null;
  /** Page that the clipboard was last open at. */
  clipLast: ClipTab;
  manual: boolean;
  leadInHand: Lead | null;
  /** How often the lead in hand was set down where no point is. */
  missed: number;
  /** Part or plug that was pointed at: its entry in the list is unfolded. */
  selected: string | null;
  /** Counts what was pointed at: the same again brings the list back to it. */
  picks: number;
  /** The point itself, when one was pointed at. */
  point: string | null;
  /** Looking at the whole machine, or at the back of the panel, without walking. */
  aside: 'YARD' | 'YARD-RIGHT' | 'CREAR' | null;
  /** The meter's display stays when the leads come off. */
  meterHold: boolean;
  toolFolded: boolean;
  /** Laid aside or held as was asked for; null: held while a lead is on something or the dial is open. */
  toolHeld: boolean | null;
  dialog: 'settings' | 'help' | null;
}

/** Up to this width the list, the place and the schematic are too much side by side, pixels. */
const CROWDED = 1500;

/** On a small screen the schematic, which is read, has more of it than the place. */
const firstSplit = (): number => (innerWidth <= CROWDED && innerWidth > innerHeight ? 0.4 : 0.5);

export const ui = new Observable<Ui>({
  here: true,
  hereAside: false,
  sheet: null,
  sheetLast: null,
  split: 'innerWidth' in globalThis ? firstSplit() : 0.5,
  clip: null,
  clipLast: 'notes',
  manual: false,
  leadInHand: null,
  missed: 0,
  selected: null,
  picks: 0,
  point: null,
  aside: null,
  meterHold: false,
  toolFolded: true,
  toolHeld: null,
  dialog: null,
});

/** A tablet held upright: with the list open the instrument has its own ground beside it. */
const OWN_GROUND = '(max-width: 900px) and (orientation: portrait)';

/** Is the instrument in the hand, or laid aside so that it covers little? */
export const isHeld = (
  { toolHeld, toolFolded, here, sheet }: Ui,
  leads: Readonly<Record<Lead, string | null>>,
): boolean =>
  toolHeld ??
  (!toolFolded ||
    leads.red !== null ||
    leads.black !== null ||
    (here && sheet === null && matchMedia(OWN_GROUND).matches));

export function openSheet(sheet: string): void {
  const { here, sheet: open } = ui.value;
  const putAside = open === null && here && innerWidth <= CROWDED;
  // The manual would lie over it.
  ui.update(putAside ? { sheet, manual: false, here: false, hereAside: true } : { sheet, manual: false });
}

export function closeSheet(): void {
  const { here, hereAside } = ui.value;
  ui.update({ sheet: null, sheetLast: ui.value.sheet, here: here || hereAside, hereAside: false });
}

export function resetUi(): void {
  // Held upright the list has its own ground below the drawing.
  const narrow = innerWidth < 900 && innerWidth > innerHeight;
  ui.update({
    here: !narrow,
    hereAside: false,
    sheet: null,
    clip: null,
    manual: false,
    leadInHand: null,
    missed: 0,
    selected: null,
    point: null,
    aside: null,
    meterHold: false,
    toolFolded: true,
    toolHeld: null,
    dialog: null,
  });
}

/** Takes a lead in hand, or puts down what is in it. */
export function takeLead(lead: Lead | null): void {
  ui.update({ leadInHand: lead, missed: 0 });
}

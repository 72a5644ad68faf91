/** What the stage is told to show and what it tells back. It draws and decides nothing. */
import type { Theme } from './drawing.ts';

export interface StageView {
  /** 'YARD', 'YARD-RIGHT', a zone such as 'ENGL', or 'CREAR' (the back of the dash panel). */
  place: string;
  /** Access steps that are open: their covers are off. */
  opened: string[];
  /** Parts out of their sockets; they lie on the cloth. */
  pulled: string[];
  /** Connectors parted. */
  unplugged: string[];
  /** Wire ends off their terminals, such as '208A@to'. */
  lifted: string[];
  /** Fuses that are pulled and whose link is seen to be open. */
  blown: string[];
  /** Controls of the book by name: key 'run', lever 'N', pbrake '1' … */
  controls: Record<string, string>;
  /** Lit lamps by their name in the drawing: CHG, PBL, E9.54 … */
  lamps: Record<string, boolean>;
  chocks: boolean;
  cranking: boolean;
  running: boolean;
  leads: { red: string | null; black: string | null };
  leadInHand: 'red' | 'black' | null;
  theme: Theme;
  reducedMotion: boolean;
  /** The cluster's display and gauges (0 to 1); left out, the display is blank and the needles rest. */
  readouts?: Record<string, number | string>;
}

export interface StageEvents {
  onPoint(point: string): void;
  onZone(zone: string): void;
  onControl(control: string, value: string): void;
  onPart(part: string): void;
  onHover(what: { point?: string; part?: string; zone?: string } | null): void;
}

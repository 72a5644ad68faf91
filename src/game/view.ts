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
  /** Words of displays and needles (0 to 1) by name. A display that lacks a word is blank, a needle that is left out rests. */
  readouts?: Record<string, number | string>;
}

/** Something that should stay in sight: a point of the book, a handle, a lamp, a part. */
export interface StageSpot {
  point?: string;
  /** One of nine spots spread over a part. */
  part?: string;
  onSheet: boolean;
  /** CSS pixels of the stage. */
  x: number;
  y: number;
}

export interface StageEvents {
  onPoint(point: string): void;
  onZone(zone: string): void;
  onControl(control: string, value: string): void;
  onPart(part: string): void;
  /** A lead in hand was set down where no point is. */
  onMiss(): void;
  onHover(what: { point?: string; part?: string; zone?: string } | null): void;
  /** A place has been laid out: points may be elsewhere than before. */
  onLaid?(): void;
}

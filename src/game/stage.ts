/**
 * The stage: the place where the student stands, and beside it the schematic when it is open. Draws the view that it is
 * given and says what was pointed at. It knows nothing of volts, jobs or scores.
 */
import { openCanvas } from './canvas.ts';
import { Disposer } from './disposer.ts';
import type { Box, Drawing } from './drawing.ts';
import type { LandingOf } from './lifted.ts';
import { loadLettering } from './load.ts';
import { type LoadDrawing, Theatre } from './theatre.ts';
import type { StageEvents, StageSpot, StageView } from './view.ts';

export type { Drawing } from './drawing.ts';
export type { Landing, LandingOf } from './lifted.ts';
export { loadDrawing } from './load.ts';
export type { StageEvents, StageView } from './view.ts';

export interface Stage {
  show(view: StageView): void;
  /** A schematic sheet in the right part, or none. */
  showSheet(sheet: Drawing | null): void;
  /** The part of the width that the place keeps while a sheet is open, 0.2 to 0.8. */
  setSplit(fraction: number): void;
  /** One step closer or back, or the whole again. */
  zoom(step: 1 | -1 | 0, pane?: 'place' | 'sheet'): void;
  resize(): void;
  /** Brings a point or part into view and rings it for a moment, in both panes. */
  locate(id: string): void;
  /** What should stay in sight: points and handles that can be touched now, lamps, needles and displays. */
  spots(): StageSpot[];
  /** Where the drawings lie, CSS pixels of the stage. */
  grounds(): Box[];
  destroy(): void;
}

export interface StageOptions {
  /** Where a wire's end belongs, for ends that are off. */
  landing?: LandingOf;
}

export function createStage(
  host: HTMLElement,
  events: StageEvents,
  loadDrawing: LoadDrawing,
  options: StageOptions = {},
): Stage {
  const disposer = new Disposer();
  let theatre: Theatre | null = null;
  let closed = false;
  let sheet: Drawing | null = null;
  let view: StageView | null = null;
  let split = 0.55;

  void open();
  async function open(): Promise<void> {
    const [canvas, lettering] = await Promise.all([openCanvas(host, devicePixelRatio, disposer), loadLettering()]);
    if (closed) return;
    theatre = new Theatre(host, canvas, events, loadDrawing, lettering, options.landing, disposer);
    theatre.split = split;
    theatre.resize();
    if (view) void theatre.show(view);
    theatre.showSheet(sheet);
  }

  return {
    show(next) {
      view = next;
      void theatre?.show(next);
    },
    showSheet(next) {
      sheet = next;
      theatre?.showSheet(next);
    },
    setSplit(fraction) {
      split = Math.min(0.8, Math.max(0.2, fraction));
      if (theatre) theatre.split = split;
      theatre?.resize();
    },
    zoom: (step, pane = 'place') => theatre?.zoom(step, pane),
    resize: () => theatre?.resize(),
    locate: (id) => theatre?.locate(id),
    spots: () => theatre?.spots() ?? [],
    grounds: () => theatre?.grounds() ?? [],
    destroy() {
      closed = true;
      disposer.flush();
      theatre = null;
    },
  };
}

/** What of a drawing lies where on the screen, for whatever is laid over it. CSS pixels of the stage. */
import type { Box, Role } from './drawing.ts';
import type { Pane } from './pane.ts';
import type { StageSpot, StageView } from './view.ts';
import { isShown, shiftOf } from './visible.ts';

const SHOWS = new Set<Role>(['lamp', 'needle', 'screen']);
/** Where the nine spots of a part lie, as shares of its width and height. */
const SPREAD = [0.08, 0.5, 0.92];

/** Points and handles that can be touched now, lamps, needles and displays, and the parts. */
export function spotsOf(pane: Pane, view: StageView, density: number, onSheet: boolean): StageSpot[] {
  const { at, frame, drawing } = pane;
  if (!drawing) return [];
  const onScreen = (x: number, y: number) => ({
    onSheet,
    x: (frame.x + at.x + x * at.scale) / density,
    y: (frame.y + at.y + y * at.scale) / density,
  });
  const handles = drawing.controls
    .filter((c) => isShown(c, view))
    .flatMap(({ box, shift }) => {
      const { dx, dy } = shiftOf(shift, view);
      const [x, y] = [box.x + dx, box.y + dy];
      // A handle is kept clear as a whole, so all its corners count.
      return [onScreen(x, y), onScreen(x + box.w, y), onScreen(x, y + box.h), onScreen(x + box.w, y + box.h)];
    });
  const shown = drawing.layers
    .filter(({ role }) => SHOWS.has(role))
    .map(({ box }) => onScreen(box.x + box.w / 2, box.y + box.h / 2));
  const parts = drawing.parts
    .filter((p) => isShown(p, view))
    .flatMap(({ part, box, shift }) => {
      const { dx, dy } = shiftOf(shift, view);
      return SPREAD.flatMap((x) =>
        SPREAD.map((y) => ({ part, ...onScreen(box.x + dx + x * box.w, box.y + dy + y * box.h) })),
      );
    });
  const found = pane.found.map((s) => ({ point: s.point.point, ...onScreen(s.x, s.y) }));
  return [...found, ...handles, ...shown, ...parts];
}

/** The part of the screen that a drawing takes; none where nothing is drawn. */
export function groundOf({ drawing, bounds, at, frame }: Pane, density: number): Box[] {
  if (!drawing) return [];
  const within = (offset: number, start: number, length: number, room: number): [from: number, to: number] => [
    Math.max(0, offset + at.scale * start),
    Math.min(room, offset + at.scale * (start + length)),
  ];
  const [left, right] = within(at.x, bounds.x, bounds.w, frame.w);
  const [top, bottom] = within(at.y, bounds.y, bounds.h, frame.h);
  if (right <= left || bottom <= top) return [];
  return [
    {
      x: (frame.x + left) / density,
      y: (frame.y + top) / density,
      w: (right - left) / density,
      h: (bottom - top) / density,
    },
  ];
}

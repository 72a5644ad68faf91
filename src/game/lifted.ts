/** A wire's end off its terminal: its lug drawn beside the terminal, taped, with a tag that names it. */
import type { Fragments, Piece } from './raster.ts';
import type { StageView } from './view.ts';
import type { Spot } from './visible.ts';

/** Where a wire's end belongs and its base colour; the book knows, the drawing does not. */
export interface Landing {
  point: string;
  /** The colour's letters: RD, BK … */
  colour: string;
}
export type LandingOf = (end: string) => Landing | undefined;

export interface Lifted {
  end: string;
  x: number;
  y: number;
  /** Its terminal. */
  homeX: number;
  homeY: number;
  colour: string;
}

export function liftedEnds(view: StageView, found: Spot[], landing: LandingOf | undefined): Lifted[] {
  const ends: Lifted[] = [];
  for (const end of view.lifted) {
    const home = landing?.(end);
    const spot = home && found.find((s) => s.point.point === home.point || s.point.also === home.point);
    if (!home || !spot) continue;
    const beside = ends.filter((e) => Math.abs(e.x - spot.x - 44) < 30 && Math.abs(e.y - spot.y) < 120).length;
    ends.push({ end, x: spot.x + 44, y: spot.y - 34 - 34 * beside, homeX: spot.x, homeY: spot.y, colour: home.colour });
  }
  return ends;
}

/** The loose lug takes a probe under the end's own name. */
export const looseEnd = ({ end, x, y }: Lifted): Spot => ({ point: { point: end, x, y: y - 8, r: 12 }, x, y: y - 8 });

export function liftedPieces(
  fragments: Fragments,
  view: StageView,
  found: Spot[],
  landing: LandingOf | undefined,
): Piece[] {
  return liftedEnds(view, found, landing).map(({ end, x, y, homeX, homeY, colour }) => {
    const [wire] = end.split('@');
    const bend = `M${homeX + 4} ${homeY + 10}Q${x - 4} ${homeY + 8} ${x + 1} ${y}`;
    const svg =
      `<path d="${bend}" fill="none" stroke="{line}" stroke-width="12" stroke-linecap="round"/>` +
      `<path d="${bend}" fill="none" stroke="{w-${colour}}" stroke-width="9" stroke-linecap="round"/>` +
      `<circle cx="${x + 2}" cy="${y - 8}" r="11" fill="{s2}" stroke="{line}" stroke-width="1.5"/>` +
      `<circle cx="${x + 2}" cy="${y - 8}" r="4.6" fill="{p3}" stroke="{line}" stroke-width="1.5"/>` +
      `<rect x="${x + 18}" y="${y - 22}" width="78" height="26" rx="3" fill="{b1}" stroke="{line}" stroke-width="1.5"/>` +
      `<text x="${x + 57}" y="${y - 3}" font-size="17" font-weight="600" fill="{line}" text-anchor="middle">${wire} off</text>`;
    return { svg: fragments.lettered(svg, view.theme) };
  });
}

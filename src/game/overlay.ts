/** What lies over both panes: the divider, rings, marks on the sheet, the leads. */
import { type GameObjects, Math as PhaserMath } from 'phaser';
import { colourNumber } from './colours.ts';
import { drawLead, drawMark, drawRing, type LeadLook } from './leads.ts';
import type { Pane } from './pane.ts';
import type { Picked } from './pick.ts';
import type { StageView } from './view.ts';
import type { Size } from './viewport.ts';

export interface Overlay {
  /** Pixels of the device. */
  pointer: { x: number; y: number } | null;
  hover: { pane: Pane; picked: Picked } | null;
  located: string | null;
}

export interface PaneTip {
  x: number;
  y: number;
  unitX: number;
  unitY: number;
  radius: number;
}

/** Where a point or part is on screen: the drawn place of it that is nearest to another spot, if it has several. */
export function tipOf(pane: Pane, id: string, near: { x: number; y: number } | null): PaneTip | null {
  const { at, frame } = pane;
  const onScreen = (unitX: number, unitY: number, radius: number): PaneTip => ({
    x: frame.x + at.x + unitX * at.scale,
    y: frame.y + at.y + unitY * at.scale,
    unitX,
    unitY,
    radius: radius * at.scale,
  });
  const tips = pane.found
    .filter((s) => s.point.point === id || s.point.also === id)
    .map((s) => onScreen(s.x, s.y, s.point.r));
  if (tips.length > 0) {
    const far = (t: PaneTip): number => (near ? Math.hypot(t.x - near.x, t.y - near.y) : 0);
    return tips.reduce((best, tip) => (far(tip) < far(best) ? tip : best));
  }
  const part = pane.drawing?.parts.find((p) => p.part === id)?.box;
  return part ? onScreen(part.x + part.w / 2, part.y + part.h / 2, Math.max(part.w, part.h) * 0.55) : null;
}

export function drawOverlay(
  g: GameObjects.Graphics,
  view: StageView,
  overlay: Overlay,
  { place, sheet }: { place: Pane; sheet: Pane },
  bounds: Size,
  density: number,
): void {
  const look = (which: 'red' | 'black'): LeadLook => ({
    theme: view.theme,
    density,
    fromX: place.frame.w / 2 + (which === 'red' ? 22 : -22) * density,
    fromY: place.frame.h,
  });
  if (sheet.drawing) {
    const { w, h } = place.frame;
    const [half, wide] = [1.5 * density, 3 * density];
    // Between them, where the schematic's buttons are, nothing is drawn.
    if (h < bounds.h) g.fillStyle(colourNumber('paper2', view.theme)).fillRect(0, h, bounds.w, sheet.frame.y - h);
    g.fillStyle(colourNumber('ink', view.theme));
    if (h < bounds.h) g.fillRect(0, h - half, bounds.w, wide);
    else g.fillRect(w - half, 0, wide, bounds.h);
  }
  drawRings(g, overlay, [place, sheet], look('red'));
  for (const which of ['black', 'red'] as const) {
    const inHand = view.leadInHand === which ? handTip(overlay) : null;
    const point = view.leads[which];
    if (point && sheet.drawing) {
      const mark = tipOf(sheet, point, null);
      if (mark && isOn(sheet, mark)) drawMark(g, which, mark, look(which));
    }
    const tip = inHand ?? (point ? pointTip(place, point) : null);
    if (tip) drawLead(g, which, tip, look(which));
  }
}

/** A lead in hand follows the pointer and snaps to the point that it would touch. */
function handTip({ pointer, hover }: Overlay): { x: number; y: number } | null {
  if (!pointer || hover?.picked.kind !== 'point' || hover.picked.sealed) return pointer;
  const { pane, picked } = hover;
  return {
    x: pane.frame.x + pane.at.x + picked.spot.x * pane.at.scale,
    y: pane.frame.y + pane.at.y + picked.spot.y * pane.at.scale,
  };
}

function pointTip(pane: Pane, point: string): PaneTip | null {
  const isPoint = pane.found.some((s) => s.point.point === point || s.point.also === point);
  return isPoint ? tipOf(pane, point, { x: pane.frame.w / 2, y: pane.frame.h }) : null;
}

const isOn = ({ frame }: Pane, { x, y }: { x: number; y: number }): boolean =>
  x >= frame.x && x <= frame.x + frame.w && y >= frame.y && y <= frame.y + frame.h;

function drawRings(g: GameObjects.Graphics, overlay: Overlay, panes: Pane[], look: LeadLook): void {
  const { located, hover } = overlay;
  if (located) {
    for (const pane of panes) {
      const tip = pane.drawing ? tipOf(pane, located, null) : null;
      if (tip && isOn(pane, tip)) drawRing(g, tip, Math.max(20 * look.density, tip.radius + 8 * look.density), look);
    }
  }
  if (!hover) return;
  const { pane, picked } = hover;
  const { at, frame } = pane;
  const x = (unit: number): number => frame.x + at.x + unit * at.scale;
  const y = (unit: number): number => frame.y + at.y + unit * at.scale;
  if (picked.kind === 'point') {
    const { spot } = picked;
    drawRing(
      g,
      { x: x(spot.x), y: y(spot.y) },
      Math.max(9 * look.density, Math.min(spot.point.r, 14) * at.scale),
      look,
    );
  } else if (picked.kind === 'zone' && picked.polygon) {
    const corners: PhaserMath.Vector2[] = [];
    for (let i = 0; i + 1 < picked.polygon.length; i += 2) {
      corners.push(new PhaserMath.Vector2(x(picked.polygon[i]), y(picked.polygon[i + 1])));
    }
    g.lineStyle(3 * look.density, colourNumber('focus', look.theme), 1).strokePoints(corners, true, true);
  }
}

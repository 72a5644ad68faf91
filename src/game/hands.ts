/** From gestures to meaning: which pane, what was touched, what to tell. */
import type { GestureEvents } from './gestures.ts';
import { valueAt } from './handle.ts';
import type { Overlay } from './overlay.ts';
import type { Pane } from './pane.ts';
import { type Picked, pick } from './pick.ts';
import type { StageEvents, StageView } from './view.ts';
import { zoomAt } from './viewport.ts';
import { completed } from './visible.ts';

export interface HandsDoor {
  events: StageEvents;
  /** In the order in which they are asked. */
  panes(): Pane[];
  view(): StageView | null;
  density(): number;
  cursor(name: string): void;
  overlay(change: Partial<Overlay>): void;
  /** Goes closer to a spot of a drawing that is too small to read there, units. */
  approach(pane: Pane, x: number, y: number): void;
  moved(): void;
}

export class Hands implements GestureEvents {
  private holding: { control: string; back: string } | null = null;
  private told = '';

  constructor(private readonly door: HandsDoor) {}

  /** A handle that springs back is held for as long as the finger is on it. */
  press(x: number, y: number): boolean {
    const picked = this.at(x, y)?.picked;
    if (picked?.kind !== 'control') return false;
    const { control } = picked;
    const value = this.valueOf(picked);
    const back = value === null ? undefined : control.springs?.[value];
    if (value === null || back === undefined) return false;
    this.holding = { control: control.control, back };
    this.door.events.onControl(control.control, value);
    return true;
  }

  release(): void {
    const { holding } = this;
    this.holding = null;
    if (holding) this.door.events.onControl(holding.control, holding.back);
  }

  tap(x: number, y: number, isFinger: boolean): void {
    const found = this.at(x, y);
    const picked = found?.picked;
    const { events } = this.door;
    const withLead = this.door.view()?.leadInHand != null;
    if (withLead && (!picked || picked.kind === 'part')) {
      events.onMiss();
      return;
    }
    if (!found || !picked) return;
    if (isFinger && !withLead) this.comeCloser(found.pane, picked);
    if (picked.kind === 'point') events.onPoint(picked.spot.point.point);
    else if (picked.kind === 'part') events.onPart(picked.part);
    else if (picked.kind === 'zone') events.onZone(picked.zone);
    else {
      const value = this.valueOf(picked);
      if (value !== null) events.onControl(picked.control.control, value);
    }
  }

  private comeCloser(pane: Pane, picked: Picked): void {
    if (picked.kind === 'point') this.door.approach(pane, picked.spot.x, picked.spot.y);
    if (picked.kind !== 'part') return;
    const { x, y, w, h } = picked.box;
    this.door.approach(pane, x + w / 2, y + h / 2);
  }

  hover(x: number, y: number): void {
    const found = this.at(x, y);
    const density = this.door.density();
    this.door.overlay({ pointer: { x: x * density, y: y * density }, hover: found });
    this.door.cursor(!found ? 'grab' : isSealed(found.picked) ? 'not-allowed' : 'pointer');
    this.tell(found?.picked ?? null);
  }

  leave(): void {
    this.door.overlay({ pointer: null, hover: null });
    this.tell(null);
  }

  pan(x: number, y: number, dx: number, dy: number): void {
    const pane = this.paneAt(x, y);
    const density = this.door.density();
    if (!pane) return;
    pane.move({ ...pane.at, x: pane.at.x + dx * density, y: pane.at.y + dy * density });
    this.door.moved();
  }

  zoom(x: number, y: number, factor: number): void {
    const pane = this.paneAt(x, y);
    const density = this.door.density();
    if (!pane) return;
    const [px, py] = [x * density - pane.frame.x, y * density - pane.frame.y];
    const least = pane.fit().scale;
    pane.move(zoomAt(pane.at, factor, px, py, least, density));
    pane.fitted = pane.at.scale <= least * 1.001;
    if (pane.fitted) pane.move(pane.fit());
    this.door.moved();
  }

  settle(): void {
    this.door.moved();
  }

  private paneAt(x: number, y: number): Pane | null {
    const density = this.door.density();
    const isIn = ({ drawing, frame }: Pane): boolean =>
      drawing !== null && x * density >= frame.x && x * density < frame.x + frame.w && y * density < frame.y + frame.h;
    return this.door.panes().find(isIn) ?? null;
  }

  private at(x: number, y: number): { pane: Pane; picked: Picked } | null {
    const pane = this.paneAt(x, y);
    const view = this.door.view();
    if (!pane?.drawing || !view) return null;
    const density = this.door.density();
    const picked = pick({
      drawing: pane.drawing,
      view: completed(view, pane.drawing),
      found: pane.found,
      x: (x * density - pane.frame.x - pane.at.x) / pane.at.scale,
      y: (y * density - pane.frame.y - pane.at.y) / pane.at.scale,
      unit: density / pane.at.scale,
    });
    return picked && { pane, picked };
  }

  private valueOf({ control, x, y }: Extract<Picked, { kind: 'control' }>): string | null {
    const current = this.door.view()?.controls[control.control] ?? control.rest;
    return valueAt(control, current, x, y);
  }

  /** Tells a hover once for as long as it stays on the same thing. */
  private tell(picked: Picked | null): void {
    const what = !picked ? null : hovered(picked);
    const key = JSON.stringify(what);
    if (key === this.told) return;
    this.told = key;
    this.door.events.onHover(what);
  }
}

const isSealed = (picked: Picked): boolean => picked.kind === 'point' && picked.sealed === true;

function hovered(picked: Picked): { point?: string; part?: string; zone?: string } {
  switch (picked.kind) {
    case 'point':
      return { point: picked.spot.point.point };
    case 'control':
      return { part: picked.control.part };
    case 'part':
      return { part: picked.part };
    case 'zone':
      return { zone: picked.zone };
  }
}

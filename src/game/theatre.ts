/** What stands on the canvas while it is open: two panes, the leads over them, the hands in front. */
import type { GameObjects } from 'phaser';
import { Animator } from './animator.ts';
import type { Canvas } from './canvas.ts';
import type { Disposer } from './disposer.ts';
import type { Box, Drawing } from './drawing.ts';
import { listenForGestures } from './gestures.ts';
import { Hands } from './hands.ts';
import { groundOf, spotsOf } from './in-sight.ts';
import type { Lettering } from './lettering.ts';
import type { LandingOf } from './lifted.ts';
import { drawOverlay, type Overlay, tipOf } from './overlay.ts';
import { Pane } from './pane.ts';
import type { StageEvents, StageSpot, StageView } from './view.ts';
import { atHead, centredOn, held, isStacked, LEGIBLE, SHEET_HEAD, zoomAt } from './viewport.ts';

export type LoadDrawing = (id: string) => Promise<Drawing>;

/** A ring that shows where something is, ms. */
const LOCATE_MS = 2200;
const SETTLE_MS = 130;
const APPROACH_MS = 220;

export class Theatre {
  split = 0.55;
  private readonly place: Pane;
  private readonly sheet: Pane;
  private readonly animator: Animator;
  private readonly graphics: GameObjects.Graphics;
  private readonly hands: Hands;
  private density = devicePixelRatio;
  private view: StageView | null = null;
  private overlay: Overlay = { pointer: null, hover: null, located: null };
  private settling: ReturnType<typeof setTimeout> | undefined;
  private asked = '';

  constructor(
    private readonly host: HTMLElement,
    private readonly canvas: Canvas,
    private readonly events: StageEvents,
    private readonly loadDrawing: LoadDrawing,
    lettering: Lettering,
    landing: LandingOf | undefined,
    disposer: Disposer,
  ) {
    const { scene } = canvas;
    this.animator = new Animator((now) => this.draw(now));
    this.animator.restless = () => this.shaking()?.pause ?? null;
    const { redraw, animate } = this.animator;
    const door = { scene, lettering, density: () => this.density, redraw, animate, landing };
    this.place = new Pane(door);
    this.sheet = new Pane(door);
    this.graphics = scene.add.graphics();
    scene.cameras.main.ignore([this.place.root, this.sheet.root]);
    this.place.camera.ignore([this.sheet.root, this.graphics]);
    this.sheet.camera.ignore([this.place.root, this.graphics]);
    // The camera of the leads covers both panes and is drawn last.
    const { cameras } = scene.cameras;
    cameras.push(...cameras.splice(cameras.indexOf(scene.cameras.main), 1));
    this.hands = new Hands({
      events,
      panes: () => [this.sheet, this.place],
      view: () => this.view,
      density: () => this.density,
      cursor: (cursor) => {
        canvas.element.style.cursor = cursor;
      },
      overlay: (overlay) => {
        this.overlay = { ...this.overlay, ...overlay };
        redraw();
      },
      approach: (pane, x, y) => this.approach(pane, x, y),
      moved: () => this.settle(),
    });
    listenForGestures(canvas.element, this.hands, disposer);
    const observer = new ResizeObserver(() => this.resize());
    observer.observe(host);
    disposer.add(() => {
      observer.disconnect();
      clearTimeout(this.settling);
      this.animator.stop();
    });
  }

  async show(view: StageView): Promise<void> {
    const isNew = this.view?.place !== view.place;
    this.asked = view.place;
    const drawing = await this.loadDrawing(view.place);
    if (this.asked !== view.place) return;
    this.view = view;
    this.place.setDrawing(drawing);
    if (isNew) this.overlay = { ...this.overlay, hover: null, located: null };
    this.place.show(view);
    this.sheet.show(view);
    this.animator.redraw();
    this.events.onLaid?.();
  }

  /** What should stay in sight: points and handles that can be touched now, lamps, needles and displays. */
  spots(): StageSpot[] {
    const { view, density } = this;
    if (!view) return [];
    return [this.place, this.sheet].flatMap((pane) => spotsOf(pane, view, density, pane === this.sheet));
  }

  /** Where the drawings lie, CSS pixels of the stage. */
  grounds(): Box[] {
    return [this.place, this.sheet].flatMap((pane) => groundOf(pane, this.density));
  }

  showSheet(sheet: Drawing | null): void {
    const isNew = sheet !== null && sheet !== this.sheet.drawing;
    this.sheet.setDrawing(sheet);
    this.resize();
    if (this.view) this.sheet.show(this.view);
    if (isNew) this.openAcross();
  }

  /** A sheet too small to read as a whole is opened at its head, as wide as its pane. */
  private openAcross(): void {
    const { sheet, density } = this;
    const across = atHead(sheet.bounds, sheet.size);
    const scale = Math.min(across.scale, LEGIBLE.good * density);
    if (sheet.at.scale >= LEGIBLE.least * density || scale <= sheet.at.scale * 1.05) return;
    sheet.fitted = false;
    sheet.move(held({ ...across, scale }, sheet.bounds, sheet.size, 0));
    this.settle();
  }

  resize(): void {
    this.density = devicePixelRatio;
    const [w, h] = [this.host.clientWidth, this.host.clientHeight];
    if (w === 0 || h === 0) return;
    this.canvas.resize(w, h, this.density);
    const [width, height] = [Math.round(w * this.density), Math.round(h * this.density)];
    const hasSheet = this.sheet.drawing !== null;
    const stacked = isStacked({ w, h });
    const left = hasSheet && !stacked ? Math.round(width * this.split) : width;
    const top = hasSheet && stacked ? Math.round(height * this.split) : height;
    const head = Math.min(Math.round(SHEET_HEAD * this.density), height - top - 1);
    this.place.setFrame({ x: 0, y: 0, w: left, h: top });
    this.sheet.setFrame(
      stacked
        ? { x: 0, y: top + head, w: width, h: height - top - head }
        : { x: left, y: 0, w: width - left, h: height },
    );
    this.sheet.camera.setVisible(hasSheet);
    this.canvas.scene.cameras.main.setViewport(0, 0, width, height).setBackgroundColor('rgba(0,0,0,0)');
    this.settle();
    this.events.onLaid?.();
  }

  zoom(step: 1 | -1 | 0, which: 'place' | 'sheet'): void {
    const pane = which === 'place' ? this.place : this.sheet;
    const { w, h } = pane.frame;
    pane.fitted = step === 0;
    const next =
      step === 0 ? pane.fit() : zoomAt(pane.at, step > 0 ? 1.4 : 1 / 1.4, w / 2, h / 2, pane.fit().scale, this.density);
    pane.move(next);
    pane.fitted = pane.at.scale <= pane.fit().scale * 1.001;
    this.settle();
  }

  /** A whole place on a small screen can be found one's way in but not read: what a finger touched comes closer. */
  private approach(pane: Pane, x: number, y: number): void {
    if (!pane.fitted || pane.at.scale >= LEGIBLE.least * this.density) return;
    const from = pane.at;
    const to = held(centredOn(x, y, LEGIBLE.good * this.density, pane.size), pane.bounds, pane.size, 0);
    const step = (share: number): void => {
      const mix = (a: number, b: number): number => a + (b - a) * share;
      pane.move({ scale: mix(from.scale, to.scale), x: mix(from.x, to.x), y: mix(from.y, to.y) });
    };
    pane.fitted = false;
    const end = (): void => {
      this.settle();
      this.events.onLaid?.();
    };
    if (this.view?.reducedMotion) {
      step(1);
      end();
    } else this.animator.animate('approach', APPROACH_MS, step, end);
  }

  locate(id: string): void {
    for (const pane of [this.place, this.sheet]) {
      const tip = tipOf(pane, id, null);
      if (!tip) continue;
      const { x, y, w, h } = pane.frame;
      const isSmall = pane.at.scale < 0.9 * this.density;
      const isOff = tip.x < x || tip.x > x + w || tip.y < y || tip.y > y + h;
      if (!isSmall && !isOff) continue;
      const scale = Math.max(pane.at.scale, 1.1 * this.density);
      pane.fitted = false;
      pane.move(centredOn(tip.unitX, tip.unitY, scale, pane.size));
    }
    this.overlay = { ...this.overlay, located: id };
    const end = (): void => {
      if (this.overlay.located === id) this.overlay = { ...this.overlay, located: null };
    };
    this.animator.animate('locate', LOCATE_MS, () => undefined, end);
    this.settle();
  }

  /** Painting at the new scale waits until the hand rests. */
  private settle(): void {
    this.animator.redraw();
    clearTimeout(this.settling);
    this.settling = setTimeout(() => {
      void this.place.paint();
      void this.sheet.paint();
    }, SETTLE_MS);
  }

  /** How far the machine shakes, CSS pixels, and the pause between frames, ms: an idling engine is left to a few. */
  private shaking(): { by: number; pause: number } | null {
    const { view } = this;
    if (!view || view.reducedMotion) return null;
    if (view.cranking) return { by: 1.8, pause: 16 };
    return view.running ? { by: 0.7, pause: 90 } : null;
  }

  private draw(now: number): void {
    const amount = (this.shaking()?.by ?? 0) * this.density;
    const shake = amount * Math.sin(now / 21) * (0.6 + 0.4 * Math.sin(now / 137));
    this.place.shake(shake * 0.5, shake);
    const bounds = { w: this.host.clientWidth * this.density, h: this.host.clientHeight * this.density };
    const panes = { place: this.place, sheet: this.sheet };
    if (this.view) drawOverlay(this.graphics.clear(), this.view, this.overlay, panes, bounds, this.density);
    this.canvas.draw();
  }
}

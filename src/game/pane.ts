/** One drawing on the canvas: the place in the left part, or a schematic sheet in the right. */
import type { Cameras, GameObjects, Scene } from 'phaser';
import { clothBox, clothPieces } from './cloth.ts';
import { colourNumber } from './colours.ts';
import type { Box, Drawing, Layer, Pose } from './drawing.ts';
import type { Lettering } from './lettering.ts';
import { type LandingOf, type Lifted, liftedEnds, liftedSvg, looseEnd, withoutEnds } from './lifted.ts';
import { Movers, type MovingPiece } from './movers.ts';
import { type Content, Plate } from './plates.ts';
import { Fragments, isWritten, type Piece } from './raster.ts';
import type { StageView } from './view.ts';
import { fitting, held, type Placement, type Size, seen } from './viewport.ts';
import { completed, isShown, poseOf, type Spot, shiftOf, spots } from './visible.ts';

export interface PaneDoor {
  scene: Scene;
  lettering: Lettering;
  density: () => number;
  redraw: () => void;
  /** Runs a motion of some milliseconds; `step` gets the share from 0 to 1. */
  animate: (name: string, ms: number, step: (share: number) => void, done?: () => void) => void;
  landing?: LandingOf | undefined;
}

/** How long a handle takes to its next detent, ms. */
const DETENT_MS = 140;
const WORDS_MS = 250;
const MARGIN = 10;

export class Pane {
  readonly camera: Cameras.Scene2D.Camera;
  readonly root: GameObjects.Container;
  drawing: Drawing | null = null;
  at: Placement = { scale: 1, x: 0, y: 0 };
  frame = { x: 0, y: 0, w: 1, h: 1 };
  found: Spot[] = [];
  private lifted: Lifted[] = [];
  /** The drawing with the cloth below it when something lies there. */
  bounds: Box = { x: 0, y: 0, w: 1600, h: 900 };
  /** Still fitted to the pane: a new size fits it again. */
  fitted = true;
  private view: StageView | null = null;
  private fragments: Fragments | null = null;
  private plates: Plate[] = [];
  private contents: Content[] = [];
  private tiers: { still: GameObjects.Container; moving: GameObjects.Container }[] = [];
  /** The plate on which a tier is painted. */
  private plateOf: number[] = [];
  private movers: Movers;
  /** What is on its way now, and where each piece stands or goes to. */
  private readonly turning = new Map<string, Required<Pose>>();
  private readonly goals = new Map<string, Required<Pose>>();
  private moverKey = '';
  private words = '';
  private wordsAt = 0;
  private later: ReturnType<typeof setTimeout> | undefined;
  private busy = false;
  private again = false;

  constructor(private readonly door: PaneDoor) {
    const { scene } = door;
    this.root = scene.add.container(0, 0);
    this.camera = scene.cameras.add(0, 0, 1, 1).setRoundPixels(false);
    this.movers = new Movers(scene, (tier) => this.tiers[this.plateOf[tier]].moving);
  }

  setDrawing(drawing: Drawing | null): void {
    if (drawing === this.drawing) return;
    for (const plate of this.plates) plate.clear();
    this.movers.clear();
    this.moverKey = '';
    this.goals.clear();
    this.turning.clear();
    this.root.removeAll(true);
    this.drawing = drawing;
    this.fragments = drawing && new Fragments(drawing, this.door.lettering);
    this.plateOf = drawing ? platesByTier(drawing.layers) : [];
    const plates = drawing ? Math.max(0, ...this.plateOf) + 1 : 0;
    this.tiers = Array.from({ length: plates }, () => {
      const still = this.door.scene.make.container({}, false);
      const moving = this.door.scene.make.container({}, false);
      this.root.add([still, moving]);
      return { still, moving };
    });
    this.plates = this.tiers.map(({ still }) => new Plate(this.door.scene, still));
    this.contents = [];
    this.fitted = true;
  }

  setFrame(frame: { x: number; y: number; w: number; h: number }): void {
    this.frame = frame;
    this.camera.setViewport(frame.x, frame.y, Math.max(1, frame.w), Math.max(1, frame.h));
    this.move(this.fitted ? this.fit() : this.at);
  }

  get size(): Size {
    return { w: this.frame.w, h: this.frame.h };
  }

  fit(): Placement {
    return fitting(this.bounds, this.size, MARGIN * this.door.density());
  }

  move(at: Placement): void {
    this.at = held(at, this.bounds, this.size);
    this.root.setPosition(this.at.x, this.at.y).setScale(this.at.scale);
    const window = seen(this.at, this.size);
    this.contents.forEach((content, i) => {
      this.plates[i]?.settle(content, window);
    });
    this.door.redraw();
  }

  /** A shake of the whole drawing, pixels. */
  shake(dx: number, dy: number): void {
    this.root.setPosition(this.at.x + dx, this.at.y + dy);
  }

  show(view: StageView): void {
    const { drawing, fragments } = this;
    if (!drawing || !fragments) return;
    const whole = completed(view, drawing);
    const last = this.view;
    this.view = whole;
    this.camera.setBackgroundColor(colourNumber('paper2', view.theme));
    const found = spots(drawing, whole);
    this.lifted = liftedEnds(drawing, whole, found, this.door.landing);
    this.found = [...found, ...this.lifted.map(looseEnd)];
    const bounds = clothBox(drawing, whole);
    const resized = bounds.h !== this.bounds.h || bounds.w !== this.bounds.w;
    this.bounds = bounds;
    this.contents = this.tiers.map((_, tier) => this.content(tier, fragments, whole));
    if (this.fitted || resized) this.move(this.fitted ? this.fit() : this.at);
    this.turnMovers(drawing, whole, last);
    void this.paint();
  }

  /** Paints what has changed at the scale of now; asked again while painting, it goes round once more. */
  async paint(): Promise<void> {
    if (this.busy) {
      this.again = true;
      return;
    }
    this.busy = true;
    try {
      do {
        this.again = false;
        await this.paintOnce();
      } while (this.again);
    } finally {
      this.busy = false;
    }
  }

  private async paintOnce(): Promise<void> {
    const { drawing, view, contents, plates } = this;
    if (!drawing || !view) return;
    const scale = this.at.scale;
    const window = seen(this.at, this.size);
    const fade = view.reducedMotion ? null : this.door.animate;
    const work = contents.map((content, i) => plates[i].paint(content, this.fit().scale, scale, window, fade));
    const changed = await Promise.all(work);
    const moving = this.moving(drawing, view);
    const moved = this.drawing === drawing && (await this.paintMovers(moving, scale, window));
    if (changed.includes(true) || moved) this.door.redraw();
  }

  private async paintMovers(pieces: MovingPiece[], scale: number, window: Box): Promise<boolean> {
    const key = this.keyOf(pieces, scale, window);
    const words = pieces
      .filter((p) => p.layer.role === 'screen')
      .map((p) => p.svg)
      .join('');
    if (key === this.moverKey && words === this.words) return false;
    const now = performance.now();
    // A display that counts is painted four times a second, not at every step of the machine.
    const early = this.wordsAt + WORDS_MS - now;
    if (key === this.moverKey && early > 0) {
      clearTimeout(this.later);
      this.later = setTimeout(() => void this.paint(), early);
      return false;
    }
    const moved = await this.movers.paint(pieces, scale, window);
    if (moved) [this.moverKey, this.words, this.wordsAt] = [key, words, now];
    if (moved) this.restMovers();
    return moved;
  }

  private keyOf(pieces: MovingPiece[], scale: number, window: Box): string {
    const isClose = scale > this.fit().scale * 1.5;
    const where = isClose ? [window.x, window.y].map((n) => Math.round(n / 40)) : [];
    const state = pieces
      .filter((p) => p.layer.role !== 'needle')
      .map((p) => [p.pose.turn, p.pose.dx, p.pose.dy, p.shift.dx, p.shift.dy]);
    return JSON.stringify([this.view?.theme, scale, where, state]);
  }

  private content(tier: number, fragments: Fragments, view: StageView): Content {
    const layers = fragments.drawing.layers.filter(
      (l) => this.plateOf[l.tier] === tier && isStill(l) && isShown(l, view),
    );
    const change = withoutEnds(fragments.drawing, this.lifted);
    for (const [name, svg] of change) change.set(name, fragments.lettered(svg, view.theme));
    const pieces: Piece[] = layers.map((layer) => {
      const { dx, dy } = shiftOf(layer.shift, view);
      const svg = fragments.with(layer, view.theme, change);
      return dx === 0 && dy === 0 ? { svg } : { svg, transform: `translate(${dx} ${dy})` };
    });
    const key = [
      view.theme,
      [...change.keys()].join(),
      ...layers.map((l) => l.id + JSON.stringify(shiftOf(l.shift, view))),
    ];
    let box = layers.reduce<Box | null>((all, l) => joined(all, l.box), null);
    if (tier === this.tiers.length - 1) {
      const lying = clothPieces(fragments, view);
      const lifted = this.lifted.map((end) => ({ svg: fragments.lettered(liftedSvg(end), view.theme) }));
      pieces.push(...lying, ...lifted);
      key.push(`cloth ${view.pulled.join()} ${view.blown.join()} off ${view.lifted.join()}`);
      if (lying.length + lifted.length > 0) box = joined(box, this.bounds);
    }
    return { key: key.join('|'), pieces, box: clipped(box, this.bounds) };
  }

  private moving(drawing: Drawing, view: StageView): MovingPiece[] {
    return drawing.layers
      .filter((layer) => !isStill(layer) && layer.role !== 'link')
      .map((layer) => this.movingPiece(layer, view));
  }

  private movingPiece(layer: Layer, view: StageView): MovingPiece {
    const pose = layer.motion ? poseOf(layer.motion, view) : REST;
    const isScreen = layer.role === 'screen';
    const svg = isScreen
      ? (this.fragments?.filled(layer, view.theme, view.readouts ?? {}) ?? '')
      : (this.fragments?.of(layer, view.theme) ?? '');
    const shown = isShown(layer, view) && (!isScreen || isWritten(layer.svg, view.readouts ?? {}));
    return { layer, svg, box: layer.box, pose, shift: shiftOf(layer.shift, view), shown };
  }

  /** New pictures were painted for a view that may be past by now: what does not turn stands as the view of now says. */
  private restMovers(): void {
    if (!this.drawing || !this.view) return;
    for (const { layer, shown, pose } of this.moving(this.drawing, this.view)) {
      this.movers.set(layer, shown, this.turning.has(layer.id) ? null : pose);
    }
  }

  /** Sets handles and lamps at once and turns what has been moved from where it stands to where it goes. */
  private turnMovers(drawing: Drawing, view: StageView, last: StageView | null): void {
    for (const piece of this.moving(drawing, view)) {
      const from = this.movers.pose(piece.layer);
      const { id } = piece.layer;
      const goal = this.goals.get(id);
      this.goals.set(id, piece.pose);
      // There, or on its way there: only another end is a new motion.
      if (from && goal && isSame(goal, piece.pose)) {
        this.movers.set(piece.layer, piece.shown, null);
        continue;
      }
      if (!from || !goal || view.reducedMotion || !last || last.place !== view.place) {
        this.turning.delete(id);
        this.movers.set(piece.layer, piece.shown, piece.pose);
        continue;
      }
      this.movers.set(piece.layer, piece.shown, null);
      this.turning.set(id, piece.pose);
      const isMeant = (): boolean => this.turning.get(id) === piece.pose;
      const step = (share: number): void => {
        if (isMeant()) this.movers.set(piece.layer, piece.shown, between(from, piece.pose, share));
      };
      this.door.animate(`${drawing.id}/${id}`, DETENT_MS, step, () => isMeant() && this.turning.delete(id));
    }
    this.door.redraw();
  }
}

const REST: Required<Pose> = { turn: 0, dx: 0, dy: 0 };
const MOVING = new Set(['switch', 'needle', 'lamp', 'screen']);
const isStill = (layer: Layer): boolean => !MOVING.has(layer.role) && layer.role !== 'link';

/** Tiers between which nothing moves are painted as one. */
function platesByTier(layers: Layer[]): number[] {
  const plates: number[] = [];
  let plate = 0;
  for (let tier = 0; tier <= Math.max(0, ...layers.map((l) => l.tier)); tier += 1) {
    plates.push(plate);
    if (layers.some((l) => l.tier === tier && !isStill(l) && l.role !== 'link')) plate += 1;
  }
  return plates;
}

const isSame = (a: Required<Pose>, b: Required<Pose>): boolean => a.turn === b.turn && a.dx === b.dx && a.dy === b.dy;

function between(a: Required<Pose>, b: Required<Pose>, share: number): Required<Pose> {
  const mix = (from: number, to: number): number => from + (to - from) * share;
  return { turn: mix(a.turn, b.turn), dx: mix(a.dx, b.dx), dy: mix(a.dy, b.dy) };
}

function joined(a: Box | null, b: Box): Box {
  if (!a) return { ...b };
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
}

/** A layer's box inside the drawing's edges, with room for what is shifted. */
function clipped(box: Box | null, bounds: Box): Box {
  if (!box) return { x: 0, y: 0, w: 1, h: 1 };
  const room = { x: box.x - 64, y: box.y - 64, w: box.w + 128, h: box.h + 128 };
  const x = Math.max(room.x, bounds.x);
  const y = Math.max(room.y, bounds.y);
  return {
    x,
    y,
    w: Math.max(1, Math.min(room.x + room.w, bounds.x + bounds.w) - x),
    h: Math.max(1, Math.min(room.y + room.h, bounds.y + bounds.h) - y),
  };
}

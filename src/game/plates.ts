/**
 * The still part of a drawing: one texture a tier for the whole, and a sharper one for what is on screen when zoomed in.
 * A texture is painted when its content, theme or scale changes; until the new one is there the old one stays.
 */
import { GameObjects, type Scene } from 'phaser';
import type { Box } from './drawing.ts';
import { limitedRegion, type Piece, type Region, rasterise, svgDocument } from './raster.ts';

export interface Content {
  /** Changes when anything in it does. */
  key: string;
  pieces: Piece[];
  box: Box;
}

/** Runs a change over some milliseconds; null when motion is to be reduced. */
export type Fade = ((name: string, ms: number, step: (share: number) => void, done: () => void) => void) | null;

/** A cover comes off, a part leaves its socket: the new picture comes in over the old one, ms. */
const FADE_MS = 180;
let serial = 0;

/** An image on a container that lies on the grid of the region which it was painted for. */
export class Picture {
  image: GameObjects.Image | null = null;
  region: Region | null = null;
  key = '';
  private wanted = '';

  constructor(
    private readonly scene: Scene,
    private readonly container: GameObjects.Container,
  ) {}

  /** Resolves to true when a new texture has come in. */
  async paint(content: Content, region: Region, fade: Fade): Promise<boolean> {
    const key = `${content.key}|${region.scale.toFixed(4)}|${region.left},${region.top},${region.width},${region.height}`;
    if (key === this.wanted) return false;
    this.wanted = key;
    if (content.pieces.length === 0) {
      this.clear();
      this.wanted = key;
      return true;
    }
    const canvas = await rasterise(svgDocument(content.pieces, region), region.width, region.height).catch(() => null);
    if (!canvas) {
      // A browser short of memory refuses a picture now and then; the next painting asks again.
      if (this.wanted === key) this.wanted = '';
      return false;
    }
    if (this.wanted !== key || !this.container.scene) return false;
    this.put(canvas, region, this.key !== '' && this.key !== content.key ? fade : null);
    this.key = content.key;
    return true;
  }

  private put(canvas: HTMLCanvasElement, region: Region, fade: Fade): void {
    const name = `picture-${serial++}`;
    this.scene.textures.addCanvas(name, canvas);
    const old = this.image;
    const image = new GameObjects.Image(this.scene, 0, 0, name).setOrigin(0, 0);
    image.setPosition(region.left / region.scale, region.top / region.scale).setScale(1 / region.scale);
    this.container.add(image);
    this.image = image;
    this.region = region;
    if (!old) return;
    if (!fade) {
      this.drop(old);
      return;
    }
    image.setAlpha(0);
    const show = (share: number): void => {
      if (image.scene) image.setAlpha(share);
    };
    fade(name, FADE_MS, show, () => this.drop(old));
  }

  private drop(image: GameObjects.Image): void {
    if (!image.scene) return;
    const { key } = image.texture;
    image.destroy();
    this.scene.textures.remove(key);
  }

  clear(): void {
    this.wanted = '';
    this.key = '';
    this.region = null;
    if (this.image) this.drop(this.image);
    this.image = null;
  }
}

export class Plate {
  readonly whole: Picture;
  readonly detail: Picture;

  constructor(scene: Scene, container: GameObjects.Container) {
    const [under, over] = [scene.make.container({}, false), scene.make.container({}, false)];
    container.add([under, over]);
    this.whole = new Picture(scene, under);
    this.detail = new Picture(scene, over);
  }

  /** Paints the whole at the scale of the fitted view, and a window of it when the view is closer. */
  async paint(content: Content, fitScale: number, scale: number, window: Box, fade: Fade): Promise<boolean> {
    const isClose = scale > fitScale * 1.02;
    let changed = false;
    if (isClose) {
      const box = intersection(content.box, grown(window, 0.15));
      if (box) changed = await this.detail.paint(content, limitedRegion(box, scale), fade);
      else this.detail.clear();
    }
    changed = (await this.whole.paint(content, limitedRegion(content.box, fitScale), isClose ? null : fade)) || changed;
    if (!isClose) this.detail.clear();
    this.settle(content, window);
    return changed;
  }

  /** The coarse picture shows only where the sharp one ends, so that no soft edge shines through. */
  settle(content: Content, window: Box): void {
    const { region, image } = this.detail;
    const needed = intersection(content.box, window);
    const covers = !!region && !!needed && covering(region, needed);
    image?.setVisible(this.detail.key === content.key);
    this.whole.image?.setVisible(!(covers && this.detail.key === content.key));
  }

  clear(): void {
    this.whole.clear();
    this.detail.clear();
  }
}

function covering({ left, top, width, height, scale }: Region, box: Box): boolean {
  const slack = 1.5 / scale;
  return (
    left / scale <= box.x + slack &&
    top / scale <= box.y + slack &&
    (left + width) / scale >= box.x + box.w - slack &&
    (top + height) / scale >= box.y + box.h - slack
  );
}

export function intersection(a: Box, b: Box): Box | null {
  const x = Math.max(a.x, b.x);
  const y = Math.max(a.y, b.y);
  const w = Math.min(a.x + a.w, b.x + b.w) - x;
  const h = Math.min(a.y + a.h, b.y + b.h) - y;
  return w > 0 && h > 0 ? { x, y, w, h } : null;
}

const grown = ({ x, y, w, h }: Box, share: number): Box => ({
  x: x - w * share,
  y: y - h * share,
  w: w * (1 + 2 * share),
  h: h * (1 + 2 * share),
});

/**
 * The moving part of a drawing: handles, needles, lit lamps, displays. All pieces of a place share one texture; a piece at
 * rest is painted in its pose, so that it is as sharp as the rest, and is turned as a picture only while it moves.
 */
import { GameObjects, type Scene } from 'phaser';
import type { Box, Layer, Pose } from './drawing.ts';
import { LARGEST, type Piece, type Region, rasterise, regionOf, svgDocument } from './raster.ts';

export interface MovingPiece {
  layer: Layer;
  svg: string;
  box: Box;
  pose: Required<Pose>;
  shift: { dx: number; dy: number };
  shown: boolean;
}

interface Mover extends MovingPiece {
  image: GameObjects.Image;
  /** The pose in which it was painted. */
  painted: Required<Pose>;
}

const GAP = 2;
let serial = 0;

export class Movers {
  private movers: Mover[] = [];
  private texture = '';
  private wanted = 0;

  constructor(
    private readonly scene: Scene,
    private readonly containerOf: (tier: number) => GameObjects.Container,
  ) {}

  /** Paints all pieces at a scale. Resolves to true when the new ones are in. */
  async paint(pieces: MovingPiece[], scale: number, window: Box): Promise<boolean> {
    this.wanted += 1;
    const ticket = this.wanted;
    const seen = pieces.filter((p) => near(p, window));
    const packed = pack(seen, scale);
    if (seen.length === 0 || packed.height === 0) {
      this.clear();
      return true;
    }
    const canvas = await rasterise(packed.svg, packed.width, packed.height);
    // The stage may have been closed meanwhile.
    if (ticket !== this.wanted || !this.containerOf(seen[0].layer.tier).scene) return false;
    const old = this.movers;
    const oldTexture = this.texture;
    this.texture = `movers-${serial++}`;
    const texture = this.scene.textures.addCanvas(this.texture, canvas);
    this.movers = seen.map((piece, i) => {
      const { region, x, y } = packed.frames[i];
      texture?.add(i, 0, x, y, region.width, region.height);
      const image = new GameObjects.Image(this.scene, 0, 0, this.texture, i);
      this.containerOf(piece.layer.tier).add(image);
      setOrigin(image, piece, region);
      // What is turning goes on from where it stands; it is only painted for where it goes.
      const before = old.find((m) => m.layer === piece.layer);
      return { ...piece, ...(before && { pose: before.pose, shown: before.shown }), image, painted: piece.pose };
    });
    for (const mover of old) mover.image.destroy();
    if (oldTexture) this.scene.textures.remove(oldTexture);
    for (const mover of this.movers) place(mover, mover.pose);
    return true;
  }

  /** What a piece shows now, without painting it again. */
  set(layer: Layer, shown: boolean, pose: Required<Pose> | null): void {
    for (const mover of this.movers) {
      if (mover.layer !== layer) continue;
      mover.shown = shown;
      place(mover, pose ?? mover.pose);
    }
  }

  pose(layer: Layer): Required<Pose> | null {
    return this.movers.find((m) => m.layer === layer)?.pose ?? null;
  }

  clear(): void {
    this.wanted += 1;
    for (const mover of this.movers) mover.image.destroy();
    this.movers = [];
    if (this.texture) this.scene.textures.remove(this.texture);
    this.texture = '';
  }
}

const near = ({ box, shift }: MovingPiece, window: Box): boolean => {
  const reach = Math.max(box.w, box.h);
  const x = box.x + shift.dx;
  const y = box.y + shift.dy;
  return (
    x - reach < window.x + window.w &&
    x + box.w + reach > window.x &&
    y - reach < window.y + window.h &&
    y + box.h + reach > window.y
  );
};

const pivotOf = ({ layer, box }: MovingPiece): { x: number; y: number } =>
  layer.motion?.pivot ?? { x: box.x + box.w / 2, y: box.y + box.h / 2 };

/** Turned about its pivot: the origin of the image is put where the pivot was painted. */
function setOrigin(image: GameObjects.Image, piece: MovingPiece, region: Region): void {
  const pivot = pivotOf(piece);
  const { scale, left, top, width, height } = region;
  const [x, y] = [pivot.x + piece.pose.dx, pivot.y + piece.pose.dy];
  image.setOrigin((x * scale - left) / width, (y * scale - top) / height).setScale(1 / scale);
}

function place(mover: Mover, pose: Required<Pose>): void {
  mover.pose = pose;
  const { image, painted, shift, shown } = mover;
  const pivot = pivotOf(mover);
  image.setAngle(pose.turn - painted.turn);
  image.setPosition(pivot.x + shift.dx + pose.dx, pivot.y + shift.dy + pose.dy);
  image.setVisible(shown);
}

interface Packed {
  svg: string;
  width: number;
  height: number;
  frames: { region: Region; x: number; y: number }[];
}

/** In rows; a texture that would be too large for the machine is painted coarser. */
export function pack(pieces: MovingPiece[], wantedScale: number): Packed {
  for (let scale = wantedScale; ; scale *= 0.7) {
    const packed = packAt(pieces, scale);
    if ((packed.width <= LARGEST && packed.height <= LARGEST) || scale < 0.05) return packed;
  }
}

function packAt(pieces: MovingPiece[], scale: number): Packed {
  let [x, y, row, width] = [GAP, GAP, 0, GAP];
  const frames: Packed['frames'] = [];
  const written: Piece[] = [];
  for (const piece of pieces) {
    const region = regionOf(posed(piece), scale);
    if (x + region.width + GAP > LARGEST) [x, y, row] = [GAP, y + row + GAP, 0];
    frames.push({ region, x, y });
    const [dx, dy] = [(x - region.left) / scale, (y - region.top) / scale];
    written.push({ svg: piece.svg, transform: `translate(${dx} ${dy}) ${poseTransform(piece)}` });
    x += region.width + GAP;
    width = Math.max(width, x);
    row = Math.max(row, region.height);
  }
  const height = y + row + GAP;
  return { svg: svgDocument(written, { scale, left: 0, top: 0, width, height }), width, height, frames };
}

function poseTransform({ layer, pose }: MovingPiece): string {
  const pivot = layer.motion?.pivot;
  const turn = pivot ? `rotate(${pose.turn} ${pivot.x} ${pivot.y})` : '';
  return `translate(${pose.dx} ${pose.dy}) ${turn}`;
}

/** The box of a piece in its pose, a little wider for soft edges. */
function posed(piece: MovingPiece): Box {
  const { box, layer, pose } = piece;
  const pivot = layer.motion?.pivot ?? { x: 0, y: 0 };
  const angle = (pose.turn * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const xs: number[] = [];
  const ys: number[] = [];
  for (const [x, y] of [
    [box.x, box.y],
    [box.x + box.w, box.y],
    [box.x, box.y + box.h],
    [box.x + box.w, box.y + box.h],
  ]) {
    xs.push(pivot.x + c * (x - pivot.x) - s * (y - pivot.y) + pose.dx);
    ys.push(pivot.y + s * (x - pivot.x) + c * (y - pivot.y) + pose.dy);
  }
  const [x, y] = [Math.min(...xs) - 1, Math.min(...ys) - 1];
  return { x, y, w: Math.max(...xs) + 1 - x, h: Math.max(...ys) + 1 - y };
}

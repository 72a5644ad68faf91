/**
 * A drawing as the build step writes it and as a schematic sheet is handed over: layers back to front, and what can be
 * pointed at. Lengths are drawing units (a place is 1600 × 900), angles degrees, colours `{token}`.
 */
export interface Box {
  x: number;
  y: number;
  w: number;
  h: number;
}

/** What of the view a layer or a point depends on. */
export type Topic = 'opened' | 'pulled' | 'parted' | 'lamp' | 'chocks' | 'dark' | 'blown' | 'control';

/** All rules of a layer must hold for it to show. A control's rule holds while the control stands at `value`. */
export interface Rule {
  topic: Topic;
  id: string;
  is: boolean;
  value?: string;
}

/** Turned or shifted by a control: a pose for each of its values, beside the pose in which it is drawn. */
export interface Pose {
  turn?: number;
  dx?: number;
  dy?: number;
}
export interface Motion {
  control: string;
  pivot?: { x: number; y: number };
  poses: Record<string, Pose>;
}

/** Shifted while something is in the other state: a plug's half when parted, the panel when taken off. */
export interface Shift {
  topic: 'parted' | 'opened';
  id: string;
  dx: number;
  dy: number;
}

export type Role =
  | 'base'
  | 'silhouette'
  | 'cover'
  | 'plugged'
  | 'pulled'
  | 'mated'
  | 'parted'
  | 'half'
  | 'link'
  | 'lamp'
  | 'switch'
  | 'needle'
  | 'screen'
  | 'chocks';

export interface Layer {
  id: string;
  role: Role;
  part?: string;
  when?: Rule[];
  shift?: Shift;
  motion?: Motion;
  /** Layers of a higher tier lie over all of a lower one; in a tier, moving layers lie over still ones. */
  tier: number;
  svg: string;
  box: Box;
}

export interface DrawnPoint {
  /** The book's own name; `also` is a second name of the same metal. */
  point: string;
  also?: string;
  x: number;
  y: number;
  /** Radius, units. */
  r: number;
  label?: string;
  /** `unplugged`: to be seen while the plug is together, but sealed. */
  reach?: string;
  when?: Rule[];
  shift?: Shift;
}

export interface Area {
  zone: string;
  zones: string[];
  access?: string;
  label: string;
  /** x, y, x, y … */
  polygon: number[];
  /** The sign that names the place, not the place itself. */
  sign?: true;
}

export interface DrawnControl {
  /** The book's control: `key`, `lever`; and the part that it is: `S2`. */
  control: string;
  part: string;
  kind: 'turn' | 'rock' | 'push' | 'slide';
  values: string[];
  rest: string;
  /** Let go, it springs back: { start: 'run' }. */
  springs?: Record<string, string>;
  box: Box;
  /** All the room that it sweeps, with the marks of its gate. */
  reach?: Box;
  when?: Rule[];
  shift?: Shift;
  /** Set when the handle itself moves: the box is that of the drawn pose. */
  motion?: Motion;
}

export interface DrawnPart {
  part: string;
  box: Box;
  when?: Rule[];
  shift?: Shift;
}

/** A drawn wire: its line from one end to the other. Its piece of a layer is marked `run` and its number. */
export interface Run {
  wire: string;
  /** x, y, x, y … */
  points: number[];
  width: number;
  /** The colour's letters: RD, BK … */
  colour: string;
}

export interface Drawing {
  id: string;
  width: number;
  height: number;
  title: string;
  layers: Layer[];
  points: DrawnPoint[];
  areas: Area[];
  controls: DrawnControl[];
  parts: DrawnPart[];
  runs?: Run[];
  /** Where lettering is, so that a tag can be hung beside it. */
  words?: Box[];
}

export type Theme = 'light' | 'dark';

/** A machine's book as data: everything that the reader has checked and the model is built from. */
import type { Guard, PartSpec, PointId, RegionSpec } from '../parts/spec.ts';

export interface ZoneSpec {
  id: string;
  name: string;
  access: string;
}
export interface HarnessSpec {
  id: string;
  name: string;
  /** The places that its wires may reach. */
  zones: string[];
}

/** An access step. Minutes are shop minutes; `toOpen` and `toWork` name precautions of the book. */
export interface AccessSpec {
  id: string;
  step: string;
  /** Words for closing up again. */
  undo: string;
  openMinutes: number;
  closeMinutes: number;
  fasteners: string;
  toOpen: string[];
  toOpenText: string;
  toWork: string[];
  toWorkText: string;
}

export interface PinSpec {
  pin: string;
  number: string;
  a: string;
  /** The wire (inline connector) or the device terminal (device plug) on side b. */
  b: string;
  ohms: number;
  backProbe: boolean | 'a';
}

export interface ConnectorSpec {
  id: string;
  name: string;
  zone: string;
  access: string;
  kind: 'inline' | 'device';
  harnessA: string;
  /** Harness on side b, or the device's part ids. */
  b: string[];
  cavities: number;
  sealed: boolean;
  /** Studs and nuts instead of a plug. */
  bolted?: boolean;
  failures: { mode: string; weight: number }[];
  backProbeText: string;
  note?: string;
  pins: PinSpec[];
}

export interface WireSpec {
  id: string;
  number: string;
  colour: string;
  mm2: number;
  metres: number;
  from: PointId;
  to: PointId;
  harness: string;
  ohms: number;
  ampacityAmps: number;
  /** Relative weight of a failure here, before the mode's own weight. */
  prior: number;
  failures: { mode: string; weight: number }[];
}

export interface SpliceSpec {
  id: string;
  harness: string;
  wires: string[];
  /** Wire numbers that begin here beside the one that goes through. */
  branches?: string[];
}
export interface GroundSpec {
  part: string;
  torque: string;
  wires: string[];
}

/** Something the operator or a helper can set. `momentary` springs back to the named value when let go. */
export interface ControlSpec {
  id: string;
  name: string;
  part: string;
  values: string[];
  initial: string;
  /** What each value is called on the machine: { N: 'neutral' }. */
  labels: Record<string, string>;
  /** Value it springs back to from another: { start: 'run' }. */
  springs?: Record<string, string>;
  zone: string;
  /** A condition of the surroundings rather than a handle: tank level, cold, filter. Not set by a student. */
  surroundings?: boolean;
  /** This control's spring-return position asks the engine to start. */
  starts?: boolean;
  /** The value that takes the battery off the machine. */
  disconnects?: string;
}

export interface QuantitySpec {
  id: string;
  initial: number;
  unit: string;
  text: string;
}

/** What turns the engine and when it fires. Load in starter amperes (book, section 9); inertia in A per (rpm/s). */
export interface EngineSpec {
  starter: string;
  loadAmps: number;
  loadAmpsPerRpm: number;
  inertia: number;
  idleRpm: number;
  fires: Guard;
  firesAfterMs: number;
  keepsRunning: Guard;
}

/** Something that eyes or ears notice without an instrument. No zones: it is noticed everywhere at the machine. */
export interface ObservableSpec {
  code: string;
  text: string;
  zones: string[];
  when: Guard;
  kind: 'seen' | 'heard';
  /** It flashes: while this holds it is dark between two flashes, and what the next one shows counts. */
  between?: Guard;
  /** The tell-tale that is lit by it: its id in the drawing and its name. */
  lamp?: { id: string; name: string };
}

/** A needle: volts between two points, read on its scale of [volts, share of full deflection] while `when` holds. */
export interface GaugeSpec {
  id: string;
  name: string;
  volts: [PointId, PointId];
  scale: [volts: number, share: number][];
  when?: Guard;
}

/** The instrument cluster: what its display shows, and whom it hears. Its lamps stand with what is noticed. */
export interface ClusterSpec {
  part: string;
  /** From where it can be read. */
  zones: string[];
  on: Guard;
  /** Controllers whose active codes stand on its code line, in the line's order; by network while `when` holds. */
  codesOf: { part: string; when?: Guard }[];
  gauges: GaugeSpec[];
  /** Engine speed is known while `when` holds, and is nought where its sensor is not `measured`. */
  speed: { when: Guard; measured: Guard };
  hourMeter: string;
}

export interface InterlockSpec {
  id: string;
  text: string;
  controls: [control: string, value: string][];
  seen: string[];
  missing: string[];
}

/** Points along a current's path, for the debrief. */
export interface StaircaseSpec {
  id: string;
  title: string;
  /** Controls that must stand so for the path to be fed. */
  controls: [control: string, value: string][];
  black: PointId;
  points: PointId[];
}

export interface LimitSpec {
  kind: string;
  where: string;
  what: string;
  limit: string;
  condition: string;
  from?: PointId;
  to?: PointId;
  minVolts?: number;
  maxVolts?: number;
  minOhms?: number;
  maxOhms?: number;
  part?: string;
}
/** Shop minutes and price units. */
export interface RepairSpec {
  id: string;
  name: string;
  minutes: number;
  /** Minutes that somebody stands beside it, where the rest runs by itself. */
  attendedMinutes?: number;
  price: number;
  /** The part's own minutes or price stand instead. */
  minutesFromPart?: boolean;
  priceFromPart?: boolean;
  appliesTo: string;
  effect: string;
}
export interface ToolSpec {
  id: string;
  name: string;
  effect: string;
  use: string;
}

/**
 * A precaution. It stands while the machine's state says so (`needs`), while a part is out (`pulled`) or a wire end off
 * (`lifted`); with none of these, while the student has set it and it has not lapsed.
 */
export interface PrecautionSpec {
  id: string;
  text: string;
  needs: Guard | null;
  pulled?: string;
  lifted?: string;
  /** Said when it is in place. */
  done: string;
  critical: boolean;
  /** Set by hand, it lapses when one of these happens. */
  lapsesOn?: SafetyEvent[];
  /** Set by hand, it can be true only while these stand; ids of precautions that the machine's state gives. */
  while?: string[];
  /** It names a helper: without one it can't be in place. */
  needsHelper?: boolean;
  /** Taken away again before the machine is handed back: chocks, tag, lock. */
  removed?: boolean;
}

/** Moments at which precautions matter. */
export type SafetyEvent =
  | 'crank'
  | 'stud'
  | 'disconnect'
  | 'ohms'
  | 'pull'
  | 'unplug'
  | 'open'
  | 'walk'
  | 'helper-moves';

/** At this moment one of each inner list must stand. `critical` caps the result at fail. */
export interface SafetyCheck {
  id: string;
  on: SafetyEvent;
  access?: string[];
  zones?: string[];
  /** Only where one of these is worked on: a part, a wire, or a wire end (`101A@from`). */
  at?: string[];
  needs: string[][];
  critical: boolean;
  why: string;
}

export interface ManualSection {
  id: string;
  title: string;
  text: string;
  circuit?: string;
}

/** Shop costs: price units an hour and shop minutes by item; walking minutes between zones. */
export interface CostSpec {
  labourRate: number;
  labourStepHours: number;
  minutes: Record<string, number>;
  walk: Record<string, Record<string, number>>;
}

export interface Book {
  id: string;
  name: string;
  title: string;
  reference: PointId;
  zones: ZoneSpec[];
  /** Zones in the cab: the operator's controls are in reach, and somebody can sit in the seat. */
  cab: string[];
  /** The control that says whether the seat is occupied, and the access step that tilts the seat away. */
  seat: { control: string; occupied: string; empty: string; tiltedBy: string };
  harnesses: HarnessSpec[];
  access: AccessSpec[];
  parts: PartSpec[];
  connectors: ConnectorSpec[];
  wires: WireSpec[];
  splices: SpliceSpec[];
  grounds: GroundSpec[];
  controls: ControlSpec[];
  quantities: QuantitySpec[];
  /** Regions that belong to no part: network health, engine. */
  regions: RegionSpec[];
  engine: EngineSpec;
  cluster?: ClusterSpec;
  staircases: StaircaseSpec[];
  observables: ObservableSpec[];
  /** What must not happen (or must) with an interlock in its other state; tried when a repair is verified. */
  interlocks: InterlockSpec[];
  limits: LimitSpec[];
  repairs: RepairSpec[];
  tools: ToolSpec[];
  costs: CostSpec;
  precautions: PrecautionSpec[];
  checks: SafetyCheck[];
  manual: ManualSection[];
}

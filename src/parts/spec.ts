/**
 * The words in which a book describes a part: terminals, inner elements, states and ways to fail.
 * Everything here is plain data, so that the live statechart, the kernel and the checker read the same text.
 */
import type { Change } from './change.ts';
import type { ElementId, PointId, RegionId } from './ids.ts';

export type { ElementId, PointId, RegionId } from './ids.ts';

/** A condition on the settled network and on states. Volts, amperes, ohms, revolutions a minute of the crankshaft. */
export type Guard =
  | { all: Guard[] }
  | { any: Guard[] }
  | { not: Guard }
  | { volts: [PointId, PointId]; above?: number; below?: number }
  /** Magnitude of the summed current through these elements, each counted from its `a` to its `b` end. */
  | { amps: ElementId[]; above?: number; below?: number }
  /** Resistance seen between two points with all sources at rest. */
  | { ohms: [PointId, PointId]; above?: number; below?: number }
  | { region: RegionId; is: string[] }
  | { control: string; is: string[] }
  | { quantity: string; above?: number; below?: number };

/** How long a guard must hold before the transition happens, in milliseconds of simulated time. */
export type Delay =
  | number
  /** Opening time that depends on current: [multiple of rating, ms] pairs, power-law between them, `amps` the element. */
  | { element: ElementId; ratingAmps: number; curve: [multiple: number, ms: number][] };

export interface TransitionSpec {
  from: string;
  to: string;
  when: Guard;
  afterMs?: Delay;
}

export interface RegionSpec {
  id: RegionId;
  states: string[];
  initial: string;
  transitions: TransitionSpec[];
}

/** What an element adds to the network. Ohms and volts; `when` false means open circuit. */
export type Law =
  | { kind: 'resistance'; ohms: number; coldOhms?: number }
  /** Ohms as a linear function of a quantity: `offset + scale * quantity`. */
  | { kind: 'variable'; quantity: string; scale: number; offset: number }
  /** Low resistance while `when` holds, `openOhms` (or nothing) otherwise. */
  | { kind: 'contact'; ohms: number; openOhms?: number }
  | { kind: 'source'; volts: number; ohms: number; limitAmps?: number }
  /** Lead-acid battery: rest voltage follows the state of charge; other values while it takes charge. */
  | { kind: 'battery'; openVolts: number; ohms: number; chargeVolts: number; chargeOhms: number; capacityAh: number }
  /**
   * DC motor: back-EMF `voltsPerRpm` times crank speed behind `ohms`. Above `freeRpm` its clutch runs over: an engine
   * that fires doesn't drive the armature faster than it turns unloaded.
   */
  | { kind: 'motor'; ohms: number; voltsPerRpm: number; freeRpm: number }
  /** Alternator output: holds `setVolts` between `sense` and `b`, within `limitAmps`, never above `ceilingVolts` at `a`. */
  | { kind: 'alternator'; setVolts: number; limitAmps: number; ceilingVolts: number; sense: PointId }
  /** Excitation terminal: `ohms` to ground at rest; `belowOutputVolts` under the output `of` while it charges. */
  | { kind: 'excitation'; ohms: number; belowOutputVolts: number; of: ElementId };

export interface ElementSpec {
  /** Local name; the element's id is `PART.name`. */
  id: string;
  a: PointId;
  b: PointId;
  law: Law;
  /** Only regions, controls and quantities may stand here, never volts or amperes. */
  when?: Guard;
  /** It does work or shows something: lamp, coil, motor, heater. The checker asks for its feed and its ground. */
  load?: boolean;
  note?: string;
}

/** A way in which a part fails, with its relative weight among this part's failures (the book's prior). */
export interface FailureSpec {
  mode: string;
  weight: number;
  /** What it does to the machine, where the kind of part doesn't say it: any one of these, equally often. */
  ways?: Change[][];
}

interface PartBase {
  id: string;
  name: string;
  zone: string;
  access: string;
  terminals: string[];
  price: number | null;
  replaceMinutes: number | null;
  replaceable: boolean;
  failures: FailureSpec[];
  /** Terminals that no probe can reach (inside the part). */
  hidden?: string[];
  /** What look, touch and smell show of it when it has failed in this mode, by mode. */
  signs?: Record<string, string>;
  note?: string;
}

export type PartSpec = PartBase &
  (
    | { kind: 'fuse'; ratingAmps: number; type: 'blade' | 'bolt-in'; ohms: number }
    | {
        kind: 'relay';
        coilOhms: number;
        pullInVolts: number;
        dropOutVolts: number;
        contactOhms: number;
        restContactOhms?: number;
        /** Terminals by role, so that any numbering can be used. */
        coil: [string, string];
        common: string;
        make: string;
        rest?: string;
        /** Relays of one type may change places as a test. */
        type: string;
        /** Screwed to its place, with studs instead of a socket. */
        bolted?: boolean;
      }
    | { kind: 'starter'; pullInAmps: number; dropOutAmps: number; elements: ElementSpec[] }
    | { kind: 'switch'; elements: ElementSpec[] }
    | {
        kind: 'controller';
        /** The ground terminal that its thresholds are measured against. */
        ground: string;
        /** What the manual says of each pin. */
        pins?: ControllerPinSpec[];
        elements: ElementSpec[];
        regions: RegionSpec[];
        codes: CodeSpec[];
      }
    | { kind: 'general'; symbol: string; elements: ElementSpec[]; regions?: RegionSpec[] }
  );

/** One pin of a controller as the service manual describes it. Words, not rules. */
export interface ControllerPinSpec {
  terminal: string;
  name: string;
  type: string;
  internal?: string;
  thresholds?: string;
  driverOhms?: string;
  limit?: string;
  logic?: string;
  codes?: string;
  cannotDetect?: string;
}

/** A fault code that a controller can store; `when` is its rule, a region of its own in the statechart. */
export interface CodeSpec {
  code: string;
  /** What fails and how, as a J1939-73 reader says it: suspect parameter number (19 bits), failure mode (5 bits). */
  spn: number;
  fmi: number;
  text: string;
  when: Guard;
  afterMs: number;
}

export type PartKind = PartSpec['kind'];

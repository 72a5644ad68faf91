/** Everything by which one machine differs from the book's sound one: faults, and what a hand has done to it. */
import type { ElementId, PointId, RegionId } from './ids.ts';

export type Change =
  /** Resistance added in series, ohms; `null` is an open circuit. In a wire, `at` this share of its length (0.5). */
  | { kind: 'series'; element: ElementId; ohms: number | null; at?: number }
  /** Resistance that the element has when it conducts, ohms. */
  | { kind: 'ohms'; element: ElementId; ohms: number }
  /** Its own ohms, times this. */
  | { kind: 'drift'; element: ElementId; factor: number }
  /** Conducts whatever its condition says. */
  | { kind: 'closed'; element: ElementId }
  /** A path that the book doesn't have, ohms. */
  | { kind: 'bridge'; a: PointId; b: PointId; ohms: number }
  /**
   * A wire's insulation worn through `at` (0 to 1 of its length, from its `from` end), touching `to` over `ohms`: a
   * point, or another wire `W:207A` at `toAt` of its length (0.5).
   */
  | { kind: 'chafe'; wire: string; at: number; to: PointId | ElementId; toAt?: number; ohms: number }
  /** A region that no longer leaves this state. */
  | { kind: 'stuck'; region: RegionId; state: string }
  /** Another rest voltage (state of charge) or internal resistance. Volts, ohms. */
  | { kind: 'battery'; element: ElementId; openVolts?: number; ohms?: number }
  /** An alternator that holds other volts, or gives other amperes at most. */
  | { kind: 'alternator'; element: ElementId; setVolts?: number; limitAmps?: number }
  | { kind: 'quantity'; quantity: string; value: number };

/** What a repair is done to: a part `K2`, a wire `W:206D`, a pin `X:X3.3`. */
export type Target = string;

/** One physical fault: where, how, what it does to the network, and which repairs of the book cure it. */
export interface Fault {
  at: Target;
  mode: string;
  changes: Change[];
  cures: string[];
}

/** A family of faults of one place and mode. `severities` are degrees (mostly ohms) from the mildest to the worst; empty where there is none. */
export interface FaultFamily {
  at: Target;
  mode: string;
  /** Relative prior weight. */
  weight: number;
  severities: number[];
  fault: (ohms: number) => Fault;
}

/**
 * Ohms from "hardly noticed" to "as good as open" for a conductor that carries `amps`: the scale is 12 V over the
 * rated current. Our own grid; neighbouring values bound an interval.
 */
export function severityGrid(amps: number): number[] {
  return [0.03, 0.15, 0.75, 4, 20, 90, 400].map((x) => (x * 12) / amps);
}

/** What an input of a controller can be fed through and still be told from open: ohms beyond those of a load's wire. */
export const SIGNAL_OHMS = [1700, 5200, 20_000] as const;

/** Ways in which wires and pins fail, by the book's weights. The parts' own are with their kinds. */
import { type Fault, type FaultFamily, SIGNAL_OHMS, severityGrid } from '../parts/index.ts';
import type { ConnectorSpec, PinSpec, WireSpec } from './book.ts';
import { hasLug, lugPoint, type Model } from './model.ts';
import { surroundingsOf } from './surroundings.ts';

/** Ohms of a chafed wire's touch on metal (book, faults: 0.05 to 0.1). */
const CHAFE_OHMS = 0.08;
/** Ohms between two wires pressed into each other (book, faults: 0.5). */
const PINCH_OHMS = 0.5;
/** Wet dirt on worn insulation, ohms from hardly noticed to a lamp's glow (common practice, no source). */
const LEAK_OHMS = [100_000, 20_000, 4000, 800];
const CABLE_MM2 = 10;

/** What a book can list for a wire, and for the pins of a connector. */
export const WIRE_MODES = ['open', 'high_r', 'high_r_lug', 'short_gnd'] as const;
export const PIN_MODES = ['pushed_back', 'loose_nut', 'spread', 'corroded', 'water_bridge'] as const;
/** Where a wire can rub on metal, these come beside it. */
const INSULATION_MODES = ['leak', 'short_wire', 'short_supply'];

/** All modes of a wire, those that its book doesn't list among them. */
export const wireModes = ({ failures }: WireSpec): string[] =>
  failures.flatMap(({ mode }) => (mode === 'short_gnd' ? [mode, ...INSULATION_MODES] : [mode]));

/** The thin wires of a harness may carry a signal, not a load's current, mm². */
const SIGNAL_MM2 = 1;
/** A pin's current, amperes. */
const PIN_AMPS = 20;

/**
 * Other faults of insulation beside a wire's touch of metal, as shares of that one's weight: breaks and bad joints come
 * first, then grounds, and wires that touch each other seldom (common practice, no source).
 */
const LEAK_SHARE = 0.15;
const PINCH_SHARE = 0.1;
const FEED_SHARE = 0.05;

const gridOf = (amps: number, isSignal: boolean): number[] => [...severityGrid(amps), ...(isSignal ? SIGNAL_OHMS : [])];

/** Families of one wire. A bad lug is at one end; a chafe is on the metal that is there where the wire runs. */
export function wireFaults(model: Model, wire: WireSpec): FaultFamily[] {
  const at = `W:${wire.id}`;
  const grid = gridOf(wire.ampacityAmps, wire.mm2 <= SIGNAL_MM2);
  const whole = wire.mm2 >= CABLE_MM2 || wire.harness === 'BC' ? ['replace-cable'] : ['splice'];
  const lugs = (['from', 'to'] as const)
    .filter((side) => hasLug(wire[side]))
    .map((side) => `L:${lugPoint(wire.id, side)}`);
  const family = (
    mode: string,
    weight: number,
    severities: number[],
    fault: (ohms: number) => Fault['changes'],
    cures: string[],
  ): FaultFamily => ({
    at,
    mode,
    weight: weight * wire.prior,
    severities,
    fault: (ohms) => ({ at, mode, changes: fault(ohms), cures }),
  });
  return wire.failures.flatMap(({ mode, weight }) => {
    switch (mode) {
      case 'open':
        return [family(mode, weight, [], () => [{ kind: 'series', element: at, ohms: null }], whole)];
      case 'high_r':
        return [family(mode, weight, grid, (ohms) => [{ kind: 'series', element: at, ohms }], whole)];
      case 'high_r_lug': {
        // A wire between plugs and splices has crimps instead: one at its end is as good as the other.
        if (lugs.length === 0)
          return [family(mode, weight, grid, (ohms) => [{ kind: 'series', element: at, ohms, at: 0 }], whole)];
        const cures = ['clean', 'tighten', ...whole];
        return lugs.map((lug) =>
          family(mode, weight / lugs.length, grid, (ohms) => [{ kind: 'series', element: lug, ohms }], cures),
        );
      }
      case 'short_gnd':
        return insulationFaults(model, wire, weight).map((f) =>
          family(f.mode, f.weight, f.severities, f.changes, whole),
        );
      default:
        return [];
    }
  });
}

interface InsulationFault {
  mode: string;
  weight: number;
  severities: number[];
  changes: (ohms: number) => Fault['changes'];
}

/** A wire that can rub on metal can leak to it, and can rub on what else lies beside it. */
function insulationFaults(model: Model, wire: WireSpec, weight: number): InsulationFault[] {
  const { metal, beside, feed } = surroundingsOf(model);
  const chafe = (to: string, ohms: number, at = 0.5, toAt = 0.5): Fault['changes'] => [
    { kind: 'chafe', wire: wire.id, at, to, ...(to.startsWith('W:') ? { toAt } : {}), ohms },
  ];
  const fed = feed(wire);
  const neighbours = beside(wire);
  return [
    { mode: 'short_gnd', weight, severities: [], changes: () => chafe(metal(wire), CHAFE_OHMS) },
    { mode: 'leak', weight: weight * LEAK_SHARE, severities: LEAK_OHMS, changes: (ohms) => chafe(metal(wire), ohms) },
    ...neighbours.map((other) => ({
      mode: 'short_wire',
      weight: (weight * PINCH_SHARE) / neighbours.length,
      severities: [],
      changes: () => chafe(`W:${other.wire}`, PINCH_OHMS, other.at, other.toAt),
    })),
    ...(fed === undefined
      ? []
      : [
          {
            mode: 'short_supply',
            weight: weight * FEED_SHARE,
            severities: [],
            changes: () => chafe(`W:${fed.id}`, PINCH_OHMS),
          },
        ]),
  ];
}

/** Families of one pin. A spread or corroded pin is resistance, one pushed back is open, water is a path. */
export function pinFaults({ wires }: Model, connector: ConnectorSpec, pin: PinSpec): FaultFamily[] {
  const at = `X:${connector.id}.${pin.pin}`;
  const isSignal = [pin.a, pin.b].some((wire) => (wires.get(wire)?.mm2 ?? SIGNAL_MM2 + 1) <= SIGNAL_MM2);
  const share =
    1 /
    Math.max(
      1,
      connector.failures.reduce((sum, f) => sum + f.weight, 0),
    );
  return connector.failures.flatMap(({ mode, weight }): FaultFamily[] => {
    const open = mode === 'pushed_back' || mode === 'loose_nut';
    const cures = mode === 'corroded' ? ['clean', 're-pin'] : ['re-pin'];
    if (mode === 'water_bridge') return waterBridge(connector, pin, weight * share * PIN_PRIOR);
    return [
      {
        at,
        mode,
        weight: weight * share * PIN_PRIOR,
        severities: open ? [] : gridOf(PIN_AMPS, isSignal),
        fault: (ohms) => ({ at, mode, changes: [{ kind: 'series', element: at, ohms: open ? null : ohms }], cures }),
      },
    ];
  });
}

/** Wash water between two neighbouring pins, ohms from nearly dry to salty (common practice; the book's fault: 40). */
const WATER_OHMS = [20_000, 2000, 200, 40];

/** Water lies between a pin and those beside it; it is told once, at the first of the two. */
function waterBridge(connector: ConnectorSpec, pin: PinSpec, weight: number): FaultFamily[] {
  const at = `X:${connector.id}.${pin.pin}`;
  const mode = 'water_bridge';
  const others = pinsBeside(connector, pin);
  return others.map((other) => {
    const [a, b] = [pin, other].map((p) => `${connector.id}.${p.pin}.a`);
    const fault = (ohms: number): Fault => ({ at, mode, changes: [{ kind: 'bridge', a, b, ohms }], cures: ['clean'] });
    return { at, mode, weight: weight / others.length, severities: WATER_OHMS, fault };
  });
}

/** A plug of up to so many cavities is wet all over (common practice; the book's fault joins pins 1 and 6 of X7's 8). */
const SMALL_PLUG = 8;

/**
 * The pins behind this one in the list that water reaches: all of a small plug. In a large one the next, and the one
 * across: two rows are numbered along one and back along the other (common practice, no source).
 */
function pinsBeside({ pins, cavities }: ConnectorSpec, pin: PinSpec): PinSpec[] {
  const later = pins.slice(pins.indexOf(pin) + 1);
  if (cavities <= SMALL_PLUG) return later;
  return later.filter((other, i) => i === 0 || Number(other.pin) + Number(pin.pin) === cavities + 1);
}

/** Weight of one pin against a wire of prior 1: exposed connectors fail more often than wires. Designer's judgement. */
const PIN_PRIOR = 5;

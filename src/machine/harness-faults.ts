/** Ways in which wires and pins fail, by the book's weights. The parts' own are with their kinds. */
import { type Fault, type FaultFamily, severityGrid } from '../parts/index.ts';
import type { ConnectorSpec, PinSpec, WireSpec } from './book.ts';
import { hasLug, lugPoint } from './model.ts';

/** Ohms of a chafed wire's touch on metal (book, faults: 0.05 to 0.1). */
const CHAFE_OHMS = 0.08;
const CABLE_MM2 = 10;

/** Families of one wire. A bad lug is at one end; a chafe is to the metal named, the battery's return. */
export function wireFaults(wire: WireSpec, metal: string): FaultFamily[] {
  const at = `W:${wire.id}`;
  const grid = severityGrid(wire.ampacityAmps);
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
        const cures = ['clean', 'tighten', ...whole];
        return lugs.map((lug) =>
          family(mode, weight / lugs.length, grid, (ohms) => [{ kind: 'series', element: lug, ohms }], cures),
        );
      }
      case 'short_gnd':
        return [
          family(
            mode,
            weight,
            [],
            () => [{ kind: 'chafe', wire: wire.id, at: 0.5, to: metal, ohms: CHAFE_OHMS }],
            whole,
          ),
        ];
      default:
        return [];
    }
  });
}

/** Families of one pin. A spread or corroded pin is resistance, one pushed back is open, water is a path. */
export function pinFaults(connector: ConnectorSpec, pin: PinSpec): FaultFamily[] {
  const at = `X:${connector.id}.${pin.pin}`;
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
        severities: open ? [] : severityGrid(20),
        fault: (ohms) => ({ at, mode, changes: [{ kind: 'series', element: at, ohms: open ? null : ohms }], cures }),
      },
    ];
  });
}

/** Wash water between two neighbouring pins, ohms from nearly dry to salty (common practice, no source). */
const WATER_OHMS = [20_000, 2000, 200];

/** Water lies between a pin and the next; it is told once, at the first of the two. */
function waterBridge(connector: ConnectorSpec, pin: PinSpec, weight: number): FaultFamily[] {
  const next = connector.pins[connector.pins.indexOf(pin) + 1];
  if (next === undefined) return [];
  const [a, b] = [pin, next].map((p) => `${connector.id}.${p.pin}.a`);
  const at = `X:${connector.id}.${pin.pin}`;
  const mode = 'water_bridge';
  const fault = (ohms: number): Fault => ({ at, mode, changes: [{ kind: 'bridge', a, b, ohms }], cures: ['clean'] });
  return [{ at, mode, weight, severities: WATER_OHMS, fault }];
}

/** Weight of one pin against a wire of prior 1: exposed connectors fail more often than wires. Designer's judgement. */
const PIN_PRIOR = 5;

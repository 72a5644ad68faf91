/** Ohms functions: a small source of the meter's own sends its test current, and the display is worked out from it. */

import type { World } from '../machine/index.ts';
import { fullScales } from './display.ts';

/** Volts at open leads (tools.tsv; 3.2 V at most, reference values 8.1). */
export const TEST_VOLTS = 3;
/**
 * Resistance behind them in each range from 600 Ω to 60 MΩ, ohms. Into a short that gives 1 mA, 100 µA, 10 µA, 1 µA and
 * 0.5 µA (8.1, for 400 Ω to 4 MΩ: from memory).
 */
const SOURCE_OHMS = [3e3, 30e3, 300e3, 3e6, 6e6, 6e6] as const;
/** Volts from elsewhere above which an ohms reading is of a live circuit. */
export const LIVE_VOLTS = 0.05;
/** With more than this from elsewhere at its jacks the meter shows overload: common practice, no source. */
const OUTSIDE_VOLTS = 0.5;

/** What the meter's source finds between its leads. Filaments are cold and motors stand, unless others drive them. */
export interface Found {
  /** Volts that stand there without the meter. */
  outside: number;
  ohms: number;
  live: boolean;
}

export function findBetween(world: World, red: number, black: number): Found {
  const warm = world.volts(red, black);
  if (Math.abs(warm) > LIVE_VOLTS) return { outside: warm, ohms: world.ohms(red, black), live: true };
  world.electrics.cold = true;
  world.solve();
  const found = { outside: world.volts(red, black), ohms: world.ohms(red, black), live: false };
  world.electrics.cold = false;
  world.solve();
  return found;
}

/** Diode test: amperes that it sends, whatever its leads lie on (at least 1 mA for vehicle service, 8.1). */
export const DIODE_AMPS = 1e-3;

/** Volts at the jacks on diode test. What stands there from elsewhere comes to it. */
export const diodeVolts = ({ outside, ohms }: Found): number => outside + DIODE_AMPS * ohms;

export interface Measured {
  range: number;
  /** Null for overload. */
  ohms: number | null;
}

/** Ohms as the meter works them out, in the first of these ranges that holds them; little from elsewhere is taken for a part of them. */
export function measureOhms({ outside, ohms, live }: Found, ranges: readonly number[]): Measured {
  const last = ranges[ranges.length - 1] ?? SOURCE_OHMS.length - 1;
  if (Math.abs(outside) > OUTSIDE_VOLTS) return { range: last, ohms: null };
  const scales = fullScales('ohms');
  for (const range of ranges) {
    const amps = (TEST_VOLTS - outside) / (SOURCE_OHMS[range] + ohms);
    const shown = ohms + outside / amps;
    // The wrong way round it is no resistance at all, but for the few millivolts of a strap that others use.
    if (shown < 0 && live) return { range: last, ohms: null };
    if (Math.abs(shown) < scales[range]) return { range, ohms: shown };
  }
  return { range: last, ohms: null };
}

/** A usual hand multimeter at two points of a machine. It loads what it measures. */

import { nodeOf, type World } from '../machine/index.ts';
import type { Change } from '../parts/index.ts';
import { OVERLOAD, type Scaled, show } from './display.ts';

export type MeterFunction = 'off' | 'volts-dc' | 'ohms' | 'continuity' | 'amps';

/** Input resistance on volts, ohms (reference values, section 8.1). */
export const INPUT_OHMS = 10e6;
/** Ohms function: open-circuit volts and source resistance, giving 1 mA into a short (tools.tsv; 3.2 V at most, 8.1). */
const TEST_VOLTS = 3;
const TEST_OHMS = 3000;
/** Above this the display says overload. */
const MOST_OHMS = 60e6;
/** Continuity beeps below this (50 Ω in one published manual, 8.1). */
const BEEP_OHMS = 50;
/** The 10 A jack: shunt and fuse, ohms (burden 30 to 40 mV/A: from memory), and the fuse's rating with its margin. */
export const SHUNT_OHMS = 0.035;
export const JACK_FUSE_AMPS = 11;
/** Volts from elsewhere above which an ohms reading is of a live circuit. */
export const LIVE_VOLTS = 0.05;

export interface Reading extends Scaled {
  /** Ideal value at the jacks, base units; null for overload. */
  value: number | null;
  beep?: boolean;
  /** Ohms or continuity with voltage in the circuit: the figure means nothing. */
  live?: boolean;
}

export const BLANK: Reading = { value: null, text: '', unit: '' };

/** Volts at the jacks, the meter's own load included. */
export function jackVolts(world: World, red: number, black: number): number {
  const open = world.volts(red, black);
  return (open * INPUT_OHMS) / (INPUT_OHMS + world.ohms(red, black));
}

/** Ohms as the meter works them out from its own test current, live circuit or not. */
export function jackOhms(world: World, red: number, black: number): { ohms: number | null; live: boolean } {
  const live = Math.abs(world.volts(red, black)) > LIVE_VOLTS;
  world.electrics.cold = true;
  world.solve();
  const open = world.volts(red, black);
  const source = world.ohms(red, black);
  world.electrics.cold = false;
  world.solve();
  const current = (TEST_VOLTS - open) / (TEST_OHMS + source);
  const atJacks = open + current * source;
  const ohms = Math.abs(current) < 1e-12 ? Number.POSITIVE_INFINITY : atJacks / current;
  return { ohms: ohms > MOST_OHMS || ohms < -MOST_OHMS || (current < 0 && !live) ? null : ohms, live };
}

/** What the meter shows on these points now. For amperes the shunt must already lie in the network. */
export function readMeter(world: World, fn: MeterFunction, red: string, black: string, leadOhms = 0): Reading {
  const [r, b] = [nodeOf(world.model, red), nodeOf(world.model, black)];
  switch (fn) {
    case 'off':
      return BLANK;
    case 'volts-dc': {
      const value = jackVolts(world, r, b);
      return { value, ...show('volts', value) };
    }
    case 'ohms':
    case 'continuity': {
      const { ohms, live } = jackOhms(world, r, b);
      const value = ohms === null ? null : ohms + leadOhms;
      const shown = value === null ? { text: OVERLOAD, unit: 'Ω' } : show('ohms', value);
      const reading: Reading = { value, ...shown };
      if (live) reading.live = true;
      if (fn === 'continuity') reading.beep = value !== null && Math.abs(value) < BEEP_OHMS;
      return reading;
    }
    case 'amps': {
      const value = world.volts(r, b) / SHUNT_OHMS;
      return { value, ...show('amps', value) };
    }
  }
}

/** The display when nothing is at the jacks that the dial asks: no volts, no amperes, and no way for the test current. */
export function readOpenJack(fn: MeterFunction): Reading {
  switch (fn) {
    case 'off':
      return BLANK;
    case 'volts-dc':
      return { value: 0, ...show('volts', 0) };
    case 'amps':
      return { value: 0, ...show('amps', 0) };
    case 'ohms':
      return { value: null, text: OVERLOAD, unit: 'Ω' };
    case 'continuity':
      return { value: null, text: OVERLOAD, unit: 'Ω', beep: false };
  }
}

/** What placed leads add to the network: nothing on volts and ohms, the shunt on amperes. */
export function meterLoad(fn: MeterFunction, red: string, black: string): Change[] {
  return fn === 'amps' && red !== black ? [{ kind: 'bridge', a: red, b: black, ohms: SHUNT_OHMS }] : [];
}

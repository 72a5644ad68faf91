/** A usual hand multimeter at two points of a machine. It loads what it measures. */

import { nodeOf, type World } from '../machine/index.ts';
import type { Change } from '../parts/index.ts';
import { fullScales, OVERLOAD, type Scaled, show } from './display.ts';
import { diodeVolts, findBetween, measureOhms } from './test-current.ts';

export type MeterFunction = 'off' | 'volts-dc' | 'ohms' | 'continuity' | 'diode' | 'amps' | 'volts-lo';

/** Input resistance on volts, ohms (reference values, section 8.1). */
export const INPUT_OHMS = 10e6;
/** The same on low-impedance volts, ohms: common practice, no source. */
export const LOW_OHMS = 3000;
/** Continuity beeps below this (50 Ω in one published manual, 8.1). */
const BEEP_OHMS = 50;
/** The 10 A jack: shunt and fuse, ohms (burden 30 to 40 mV/A: from memory), and the fuse's rating with its margin. */
export const SHUNT_OHMS = 0.035;
export const JACK_FUSE_AMPS = 11;

export interface Reading extends Scaled {
  /** Ideal value at the jacks, base units; null for overload. */
  value: number | null;
  beep?: boolean;
  /** Ohms or continuity with voltage in the circuit: the figure means nothing. */
  live?: boolean;
}

export const BLANK: Reading = { value: null, text: '', unit: '' };

/** How the meter is set beside its dial. */
export interface Setting {
  /** Both leads together, ohms. */
  leadOhms?: number;
}

/** Volts at the jacks, the meter's own load included. */
export function jackVolts(world: World, red: number, black: number): number {
  const open = world.volts(red, black);
  return (open * INPUT_OHMS) / (INPUT_OHMS + world.ohms(red, black));
}

/** What the meter shows on these points now. What it loads the circuit with (`meterLoad`) must already lie in the network. */
export function readMeter(world: World, fn: MeterFunction, red: string, black: string, setting: Setting = {}): Reading {
  const [r, b] = [nodeOf(world.model, red), nodeOf(world.model, black)];
  switch (fn) {
    case 'off':
      return BLANK;
    case 'volts-dc': {
      const value = jackVolts(world, r, b);
      return { value, ...show('volts', value) };
    }
    case 'ohms':
    case 'continuity':
      return readOhms(world, fn, r, b, setting);
    case 'diode':
      return readDiode(world, r, b, setting);
    case 'amps': {
      const value = world.volts(r, b) / SHUNT_OHMS;
      return { value, ...show('amps', value) };
    }
    case 'volts-lo': {
      const value = world.volts(r, b);
      return { value, ...show('volts', value) };
    }
  }
}

/** Continuity stays in the lowest range, so that its beep is quick: common practice, no source. */
function readOhms(world: World, fn: 'ohms' | 'continuity', red: number, black: number, setting: Setting): Reading {
  const between = findBetween(world, red, black);
  const found = { ...between, ohms: between.ohms + (setting.leadOhms ?? 0) };
  const { range, ohms } = measureOhms(found, fn === 'continuity' ? [0] : fullScales('ohms').map((_, i) => i));
  const shown = ohms === null ? { text: OVERLOAD, unit: show('ohms', 0, range).unit } : show('ohms', ohms, range);
  const reading: Reading = { value: ohms, ...shown };
  if (found.live) reading.live = true;
  if (fn === 'continuity') reading.beep = ohms !== null && ohms < BEEP_OHMS;
  return reading;
}

function readDiode(world: World, red: number, black: number, setting: Setting): Reading {
  const between = findBetween(world, red, black);
  const volts = diodeVolts({ ...between, ohms: between.ohms + (setting.leadOhms ?? 0) });
  const shown = show('diode', volts);
  const reading: Reading = { value: shown.text === OVERLOAD ? null : volts, ...shown };
  if (between.live) reading.live = true;
  return reading;
}

/** The display when nothing is at the jacks that the dial asks: no volts, no amperes, and no way for the test current. */
export function readOpenJack(fn: MeterFunction): Reading {
  switch (fn) {
    case 'off':
      return BLANK;
    case 'volts-dc':
    case 'volts-lo':
      return { value: 0, ...show('volts', 0) };
    case 'amps':
      return { value: 0, ...show('amps', 0) };
    case 'ohms':
      return { value: null, text: OVERLOAD, unit: 'MΩ' };
    case 'diode':
      return { value: null, text: OVERLOAD, unit: 'V' };
    case 'continuity':
      return { value: null, text: OVERLOAD, unit: 'Ω', beep: false };
  }
}

/** What placed leads add to the network: the shunt on amperes, a load on low-impedance volts, else nothing that is kept. */
export function meterLoad(fn: MeterFunction, red: string, black: string): Change[] {
  if (red === black || (fn !== 'amps' && fn !== 'volts-lo')) return [];
  return [{ kind: 'bridge', a: red, b: black, ohms: fn === 'amps' ? SHUNT_OHMS : LOW_OHMS }];
}

/** A usual hand multimeter at two points of a machine. It loads what it measures. */

import { nodeOf, type World } from '../machine/index.ts';
import type { Change } from '../parts/index.ts';
import { autoRange, fullScales, OVERLOAD, type Quantity, rangeName, type Scaled, show } from './display.ts';
import { diodeVolts, findBetween, measureOhms } from './test-current.ts';

export type MeterFunction = 'off' | 'volts-dc' | 'ohms' | 'continuity' | 'diode' | 'amps' | 'volts-lo';

/** What each function shows. */
export const QUANTITY_OF: Readonly<Record<Exclude<MeterFunction, 'off'>, Quantity>> = {
  'volts-dc': 'volts',
  'volts-lo': 'volts',
  ohms: 'ohms',
  continuity: 'ohms',
  diode: 'diode',
  amps: 'amps',
};

export const isVolts = (fn: MeterFunction): boolean => fn === 'volts-dc' || fn === 'volts-lo';

/** Names of the ranges that can be kept; continuity and diode test have one each, which is theirs anyway. */
export function rangesOf(fn: MeterFunction): string[] {
  if (fn === 'off' || fn === 'continuity' || fn === 'diode') return [];
  return fullScales(QUANTITY_OF[fn]).map((_, range) => rangeName(QUANTITY_OF[fn], range));
}

/** Resistance of both leads together, ohms (0.1 to 0.5, reference values 8.1). */
export const LEAD_OHMS = 0.2;
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
  /** Range that is kept, by its place in `rangesOf`; null: the meter takes its own. */
  range?: number | null;
  /** What is taken off every value before it is shown, base units. */
  zero?: number | null;
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
    case 'volts-dc':
      return plainly('volts', jackVolts(world, r, b), setting);
    case 'ohms':
    case 'continuity':
      return readOhms(world, fn, r, b, setting);
    case 'diode':
      return readDiode(world, r, b, setting);
    case 'amps':
      return plainly('amps', world.volts(r, b) / SHUNT_OHMS, setting);
    case 'volts-lo':
      return plainly('volts', world.volts(r, b), setting);
  }
}

/** Overload is for the jacks to say; what is taken off comes after it. */
function plainly(quantity: Quantity, value: number, { range, zero }: Setting): Reading {
  const kept = range ?? autoRange(quantity, value);
  const atJacks = show(quantity, value, kept);
  if (atJacks.text === OVERLOAD) return { value: null, ...atJacks };
  return { value, ...show(quantity, value - (zero ?? 0), kept) };
}

/** Continuity stays in the lowest range, so that its beep is quick: common practice, no source. */
function readOhms(world: World, fn: 'ohms' | 'continuity', red: number, black: number, setting: Setting): Reading {
  const between = findBetween(world, red, black);
  const found = { ...between, ohms: between.ohms + (setting.leadOhms ?? 0) };
  const { range, ohms } = measureOhms(found, fn === 'continuity' ? [0] : ohmsRanges(setting));
  const zeroed = (ohms ?? 0) - (setting.zero ?? 0);
  const shown = ohms === null ? { text: OVERLOAD, unit: show('ohms', 0, range).unit } : show('ohms', zeroed, range);
  const reading: Reading = { value: ohms, ...shown };
  if (found.live) reading.live = true;
  if (fn === 'continuity') reading.beep = ohms !== null && ohms < BEEP_OHMS;
  return reading;
}

const ohmsRanges = ({ range }: Setting): number[] => (range == null ? fullScales('ohms').map((_, i) => i) : [range]);

function readDiode(world: World, red: number, black: number, setting: Setting): Reading {
  const between = findBetween(world, red, black);
  const volts = diodeVolts({ ...between, ohms: between.ohms + (setting.leadOhms ?? 0) });
  const reading = plainly('diode', volts, { zero: setting.zero ?? null });
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

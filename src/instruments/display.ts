/** Digits of a 6000-count hand meter: what a value looks like on its display. */

export const OVERLOAD = 'OL';
/** One count of the last digit by decimals shown. */
const LAST_DIGIT = [1, 0.1, 0.01, 0.001] as const;

export interface Scaled {
  text: string;
  unit: string;
}

/** Ranges of 6000 counts (reference values, section 8.1: from memory) by full scale in the base unit, with the factor to the shown unit and its name. */
type Range = readonly [fullScale: number, factor: number, unit: string, decimals: number];

const VOLTS: readonly Range[] = [
  [0.6, 1000, 'mV', 1],
  [6, 1, 'V', 3],
  [60, 1, 'V', 2],
  [600, 1, 'V', 1],
];
const OHMS: readonly Range[] = [
  [600, 1, 'Ω', 1],
  [6e3, 1e-3, 'kΩ', 3],
  [60e3, 1e-3, 'kΩ', 2],
  [600e3, 1e-3, 'kΩ', 1],
  [6e6, 1e-6, 'MΩ', 3],
  [60e6, 1e-6, 'MΩ', 2],
];
const AMPS: readonly Range[] = [
  [6, 1, 'A', 3],
  [10, 1, 'A', 2],
];

/** Diode test: one range of volts, 0 to 3 V as vehicle service asks for (reference values, section 8.1). */
const DIODE: readonly Range[] = [[3, 1, 'V', 3]];

export type Quantity = 'volts' | 'ohms' | 'amps' | 'diode';

// A hand meter's volts function starts at 6 V full scale; millivolts are a range of their own.
const RANGES: Readonly<Record<Quantity, readonly Range[]>> = {
  volts: VOLTS.slice(1),
  ohms: OHMS,
  amps: AMPS,
  diode: DIODE,
};

/** Full scales of a quantity's ranges, base units, from the finest. */
export const fullScales = (quantity: Quantity): number[] => RANGES[quantity].map(([fullScale]) => fullScale);

/** How a range is called: its full scale in the unit that it shows. */
export function rangeName(quantity: Quantity, range: number): string {
  const found = RANGES[quantity][range];
  return found === undefined ? '' : `${Math.round(found[0] * found[1])} ${found[2]}`;
}

/** The display for a value in base units, in its range or of itself in the finest range that holds it; overload beyond the last one. */
export function show(quantity: Quantity, value: number, range?: number): Scaled {
  const ranges = RANGES[quantity];
  const last = ranges[range ?? ranges.length - 1] ?? ranges[ranges.length - 1];
  const [fullScale, factor, unit, decimals] = ranges[range ?? autoRange(quantity, value)] ?? last;
  if (Math.abs(value) >= fullScale) return { text: OVERLOAD, unit };
  const step = LAST_DIGIT[decimals] / factor;
  const counted = Math.round(value / step) * step;
  const text = fixed(counted * factor, decimals);
  return { text, unit };
}

/** The finest range that holds a value; the last one where none does. */
export function autoRange(quantity: Quantity, value: number): number {
  const ranges = RANGES[quantity];
  const found = ranges.findIndex(([fullScale]) => Math.abs(value) < fullScale);
  return found < 0 ? ranges.length - 1 : found;
}

/** Fixed decimals without locale; minus zero is shown as zero. */
function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Half-width of the meter's stated accuracy at a value, base units: 0.5 % + 2 counts volts, 1 % + 3 others. */
export function accuracy(quantity: Quantity, value: number): number {
  const [, factor, , decimals] = RANGES[quantity][autoRange(quantity, value)];
  const count = LAST_DIGIT[decimals] / factor;
  return quantity === 'volts' ? 0.005 * Math.abs(value) + 2 * count : 0.01 * Math.abs(value) + 3 * count;
}

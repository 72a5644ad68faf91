/**
 * What a technician calls a reading. Evidence moves by these classes, cut from the manual's limits and the meter's
 * accuracy, and never by millivolts that only a computer would trust.
 */
import { accuracy, DIODE_AMPS, type Quantity } from '../instruments/index.ts';
import type { Book } from '../machine/index.ts';

/** What the readings are judged against: the sound machine in the very same state. */
export interface Yardstick {
  /** Base units: volts (on diode test too), ohms or amperes; null for overload. */
  sound: number | null;
  /** Volts at the battery of the sound machine. */
  supply: number;
  /** Largest drop that the manual allows between these two points, volts. */
  limit: number;
  quantity: Quantity;
}

/** Drop allowed where the manual names none, volts (book: any closed contact or wire, loaded, 0.2 to 0.4). */
const USUAL_LIMIT = 0.25;
/** Edges between little, half, much and full, as shares of the supply. Our own cut. */
const EDGES = [0.08, 0.35, 0.65, 0.92] as const;
const NAMES = ['trace', 'low', 'half', 'weak', 'full'] as const;
/** Ohms that count as none, and the share by which a resistance may be out before it is called so. */
const NEARLY_NO_OHMS = 1;
const OHMS_SHARE = 0.15;

export function limitFor(book: Book, red: string, black: string): number {
  const drops = book.limits.filter((l) => l.kind === 'voltage drop');
  const named = drops.find((l) => (l.from === red && l.to === black) || (l.from === black && l.to === red));
  return named?.maxVolts ?? USUAL_LIMIT;
}

export function classOf(value: number | null, by: Yardstick): string {
  if (value === null) return 'open';
  if (by.quantity === 'diode') return ohmsClass(value / DIODE_AMPS, by.sound === null ? null : by.sound / DIODE_AMPS);
  return by.quantity === 'ohms' ? ohmsClass(value, by.sound) : sizeClass(value, by);
}

function sizeClass(value: number, { quantity, supply, limit, sound }: Yardstick): string {
  const full = quantity === 'volts' ? supply : Math.max(Math.abs(sound ?? 0), 0.5);
  const size = Math.abs(value);
  const sign = value < 0 && size > limit ? '-' : '';
  if (size <= (quantity === 'volts' ? limit : 0.05 * full)) return 'none';
  const band = EDGES.findIndex((edge) => size <= edge * full);
  return sign + (band < 0 ? NAMES[NAMES.length - 1] : NAMES[band]);
}

function ohmsClass(value: number, sound: number | null): string {
  // Some millivolts in a strap are divided by the test current; more than that is no resistance.
  if (value <= -NEARLY_NO_OHMS) return 'live';
  if (value < NEARLY_NO_OHMS) return 'none';
  if (sound === null || sound < NEARLY_NO_OHMS) return value > 1e5 ? 'leak' : 'ohms';
  if (Math.abs(value - sound) <= OHMS_SHARE * sound) return 'in';
  return value > sound ? 'high' : 'less';
}

/** All classes that a suspect allows: its range between the ends of its severity, widened by the meter and the model. */
export function classesBetween(ends: readonly (number | null)[], by: Yardstick): Set<string> {
  const classes = new Set(ends.map((value) => classOf(value, by)));
  const finite = ends.filter((v): v is number => v !== null);
  if (finite.length === 0) return classes;
  const low = Math.min(...finite);
  // Too much for a range that is kept is anything up to the supply; too many ohms are a class of their own.
  const isOver = by.quantity === 'volts' && finite.length < ends.length;
  const high = Math.max(...finite, isOver ? by.supply : finite[0]);
  const slack = (v: number) =>
    accuracy(by.quantity, v) + MODEL_SHARE * Math.abs(v) + (by.quantity === 'volts' ? 0.02 : 0);
  const from = low - slack(low);
  const to = high + slack(high);
  for (let i = 0; i <= STEPS; i++) classes.add(classOf(from + ((to - from) * i) / STEPS, by));
  return classes;
}

/** Machines of one make differ by about this much. Estimate. */
const MODEL_SHARE = 0.02;
const STEPS = 16;

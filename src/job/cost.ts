/** Shop minutes and prices of actions, from the book. Costs are kept in whole tenths of a minute. */
import type { Book } from '../machine/index.ts';
import type { Action } from './action.ts';
import { type Bench, measuresOhms } from './bench.ts';

export interface Cost {
  tenths: number;
  price: number;
}

/** Minutes for setting or lifting one precaution by hand; the book has them together as `secure`. */
const PRECAUTION_MINUTES = 0.5;
/** Minutes for a helper's call last this long, ms (book: free for 10 min). */
export const HELPER_STAYS_MS = 600_000;

/** Opening the meter and fitting a fuse of its own rating: minutes, and the fuse's price. Our own estimate. */
const METER_FUSE_MINUTES = 2;
const METER_FUSE_PRICE = 6;

const minutes = (value: number): Cost => ({ tenths: Math.round(value * 10), price: 0 });

export function walkMinutes(book: Book, from: string, to: string): number {
  return book.costs.walk[from]?.[to] ?? book.costs.walk[to]?.[from] ?? 0;
}

export function costOf(book: Book, bench: Bench, action: Action): Cost {
  const item = (name: string): Cost => minutes(book.costs.minutes[name] ?? 0);
  const step = (id: string) => book.access.find((a) => a.id === id);
  switch (action.do) {
    case 'ask':
      return item('ask');
    case 'walk':
      return minutes(walkMinutes(book, bench.zone, action.zone));
    case 'open':
      return minutes(step(action.access)?.openMinutes ?? 0);
    case 'close':
      return minutes(step(action.access)?.closeMinutes ?? 0);
    case 'precaution':
      return minutes(PRECAUTION_MINUTES);
    case 'helper':
      return action.call ? item('helper') : minutes(0);
    case 'operate':
      return minutes(bothLeads(bench) ? readingMinutes(book, bench) : 0.1);
    case 'read':
    case 'zero':
      return minutes(readingMinutes(book, bench));
    case 'renewFuse':
      return { ...minutes(METER_FUSE_MINUTES), price: METER_FUSE_PRICE };
    case 'look':
      return item('visual');
    case 'wiggle':
      return item('wiggle');
    case 'codes':
      return item('codes');
    case 'clearCodes':
      return minutes(repairOf(book, 'clear')?.minutes ?? 0);
    case 'unplug':
    case 'plug':
    case 'lift':
    case 'land':
      return item(action.do);
    case 'pull':
    case 'refit':
      // The book's minute is for pulling and refitting together.
      return minutes((book.costs.minutes.pull ?? 0) / 2);
    case 'exchange':
      return minutes(repairOf(book, 'exchange')?.minutes ?? 0);
    case 'repair':
      return repairCost(book, action.verb, action.target);
    case 'verify':
      return item('startAndProve');
    default:
      return minutes(0);
  }
}

const bothLeads = (bench: Bench): boolean => bench.leads.red !== null && bench.leads.black !== null;

function readingMinutes(book: Book, bench: Bench): number {
  return book.costs.minutes[measuresOhms(bench) ? 'readingOhm' : 'reading'] ?? 0;
}

/** Minutes that a repair goes on by itself before it is done, such as a battery on the charger. Nobody is paid for them. */
export function unattendedMinutes(book: Book, action: Action): number {
  if (action.do !== 'repair') return 0;
  const repair = repairOf(book, action.verb);
  return repair?.attendedMinutes === undefined ? 0 : Math.max(0, repair.minutes - repair.attendedMinutes);
}

const repairOf = (book: Book, id: string) => book.repairs.find((r) => r.id === id);

/** A part's own minutes and price where it is replaced; the repair table's otherwise. A controller is programmed too. */
function repairCost(book: Book, verb: string, target: string): Cost {
  const part = book.parts.find((p) => p.id === target);
  const repair = repairOf(book, verb);
  if (part !== undefined && (verb === 'replace' || verb === 'fuse')) {
    const program = part.kind === 'controller' ? repairOf(book, 'program') : undefined;
    return {
      tenths: Math.round(((part.replaceMinutes ?? 0) + (program?.minutes ?? 0)) * 10),
      price: (part.price ?? 0) + (program?.price ?? 0),
    };
  }
  return { tenths: Math.round((repair?.attendedMinutes ?? repair?.minutes ?? 0) * 10), price: repair?.price ?? 0 };
}

/** Labour billed in the book's steps, and parts: one sum in price units. */
export function billOf(book: Book, tenths: number, price: number): number {
  const hours = tenths / 600;
  const steps = Math.ceil(hours / book.costs.labourStepHours - 1e-9);
  return Math.round(steps * book.costs.labourStepHours * book.costs.labourRate * 100) / 100 + price;
}

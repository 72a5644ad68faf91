/** A part on the bench: a book with nothing in it but a supply whose resistance can be turned, and what is to be tried. */
import { type Book, buildModel, type Model } from '../../src/machine/index.ts';
import type { ElementSpec, PartSpec } from '../../src/parts/index.ts';
import { hobbinBook } from './hobbin.ts';

/** A plain part made of these elements. */
export function plainPart(id: string, elements: ElementSpec[]): PartSpec {
  const terminals = [...new Set(elements.flatMap((e) => [e.a, e.b]).map((point) => point.slice(id.length + 1)))];
  const bench = { zone: 'BENCH', access: 'AC0', price: null, replaceMinutes: null, replaceable: false, failures: [] };
  return { id, name: id, terminals, kind: 'general', symbol: 'box', elements, ...bench };
}

/** `PS.+` and `PS.-`: volts behind the quantity `knob`, ohms. */
export function benchSupply(volts: number): PartSpec {
  return plainPart('PS', [
    { id: 'source', a: 'PS.inner', b: 'PS.-', law: { kind: 'source', volts, ohms: 0.001 } },
    { id: 'knob', a: 'PS.+', b: 'PS.inner', law: { kind: 'variable', quantity: 'knob', scale: 1, offset: 0.001 } },
  ]);
}

/** A wire of no length between two points. */
export function joint(id: string, a: string, b: string, ohms = 1e-6): ElementSpec {
  return { id, a, b, law: { kind: 'resistance', ohms } };
}

/** The book's own part, to be tried on the bench. */
export function partOf(id: string): PartSpec {
  const part = hobbinBook().parts.find((p) => p.id === id);
  if (part === undefined) throw new Error(`the book has no part ${id}`);
  return part;
}

/** The starter stands in every book, since it turns the engine; here nothing feeds it. Reference is `PS.-`. */
export function benchModel(parts: PartSpec[], joints: ElementSpec[] = []): Model {
  const never = { quantity: 'knob', below: -1 };
  const book: Book = {
    ...hobbinBook(),
    reference: 'PS.-',
    parts: [...parts, partOf('M1'), plainPart('JOINT', joints)],
    connectors: [],
    wires: [],
    controls: [],
    quantities: [{ id: 'knob', initial: 1e9, unit: 'ohm', text: 'Resistance of the supply.' }],
    regions: [],
    engine: { ...hobbinBook().engine, fires: never, keepsRunning: never },
  };
  return buildModel(book);
}

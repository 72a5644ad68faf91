/** All kinds of file of a machine's book, by the name of their schema; and proof that they hold what a Book holds. */

import type * as z from 'zod/mini';
import type { Book } from '../machine/book.ts';
import type { Same, SharedProofs } from './schema-common.ts';
import { type MachineProofs, machineFile, observablesFile, staircasesFile } from './schema-machine.ts';
import { type PartProofs, partsFile } from './schema-parts.ts';
import {
  accessFile,
  checksFile,
  limitsFile,
  manualFile,
  precautionsFile,
  type ShopProofs,
  shopFile,
} from './schema-shop.ts';
import { connectorsFile, groundsFile, splicesFile, type WiringProofs, wiresFile } from './schema-wiring.ts';

export const BOOK_SCHEMAS = {
  machine: machineFile,
  parts: partsFile,
  connectors: connectorsFile,
  wires: wiresFile,
  splices: splicesFile,
  grounds: groundsFile,
  access: accessFile,
  precautions: precautionsFile,
  checks: checksFile,
  observables: observablesFile,
  staircases: staircasesFile,
  limits: limitsFile,
  shop: shopFile,
  manual: manualFile,
};

export type BookFileKind = keyof typeof BOOK_SCHEMAS;
type FileOf<K extends BookFileKind> = z.infer<(typeof BOOK_SCHEMAS)[K]>;
type Contents = { [K in BookFileKind]: Omit<FileOf<K>, '$schema'> }[BookFileKind];
type Intersection<U> = (U extends unknown ? (u: U) => void : never) extends (i: infer I) => void ? I : never;

/** A color is a closed list in the file and any string in the engine. */
type Widened = Omit<Intersection<Contents>, 'wires'> & { wires: Book['wires'] };

/** Fails to compile when a schema and its type in `parts/spec.ts` or `machine/book.ts` part ways. */
type Proofs = [...SharedProofs, ...PartProofs, ...WiringProofs, ...MachineProofs, ...ShopProofs];
export const schemasMatchTypes: Proofs extends true[] ? Same<Widened, Book> : false = true;

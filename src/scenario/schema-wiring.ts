/** Files of what joins the parts: connectors with their pins, wires, splices, ground studs. */
import * as z from 'zod/mini';
import type { ConnectorSpec, GroundSpec, SpliceSpec, WireSpec } from '../machine/book.ts';
import { failure, head, id, point, positive, type Same, text } from './schema-common.ts';

/** Base colors by the letter codes of IEC 60757. */
const colour = z.enum(['BK', 'BN', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'GY', 'WH', 'PK', 'TQ']);
/** The model tells connectors and splices from terminals by these names. */
const connectorId = z.string().check(z.regex(/^X\d+$/));
const spliceId = z.string().check(z.regex(/^SP\d+$/));
const count = z.int().check(z.positive());

const pin = z.strictObject({
  pin: id,
  number: id,
  a: id,
  b: point,
  ohms: positive,
  backProbe: z.union([z.boolean(), z.literal('a')]),
});

const connector = z.strictObject({
  id: connectorId,
  name: text,
  zone: id,
  access: id,
  kind: z.enum(['inline', 'device']),
  harnessA: id,
  b: z.array(id).check(z.minLength(1)),
  cavities: count,
  sealed: z.boolean(),
  bolted: z.exactOptional(z.boolean()),
  failures: z.array(failure),
  backProbeText: text,
  note: z.exactOptional(text),
  pins: z.array(pin),
});

const wire = z.strictObject({
  id,
  number: id,
  colour,
  mm2: positive,
  metres: positive,
  from: point,
  to: point,
  harness: id,
  ohms: positive,
  ampacityAmps: positive,
  prior: positive,
  failures: z.array(failure),
});

const splice = z.strictObject({
  id: spliceId,
  harness: id,
  wires: z.array(id),
  branches: z.exactOptional(z.array(id)),
});
const ground = z.strictObject({ part: id, torque: text, wires: z.array(id).check(z.minLength(1)) });

export const connectorsFile = z.strictObject({ $schema: head('connectors'), connectors: z.array(connector) });
export const wiresFile = z.strictObject({ $schema: head('wires'), wires: z.array(wire) });
export const splicesFile = z.strictObject({ $schema: head('splices'), splices: z.array(splice) });
export const groundsFile = z.strictObject({ $schema: head('grounds'), grounds: z.array(ground) });

export type WiringProofs = [
  Same<z.infer<typeof connector>, ConnectorSpec>,
  Same<Omit<z.infer<typeof wire>, 'colour'> & { colour: string }, WireSpec>,
  Same<z.infer<typeof splice>, SpliceSpec>,
  Same<z.infer<typeof ground>, GroundSpec>,
];

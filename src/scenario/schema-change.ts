/** Changes of a machine: what a job's faults do to it, and what a failure of a part does. */
import * as z from 'zod/mini';
import type { Change } from '../parts/index.ts';
import { id, notNegative, point, positive, type Same } from './schema-common.ts';

const share = z.number().check(z.gte(0), z.lte(1));

export const change = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('series'), element: point, ohms: z.nullable(positive), at: z.exactOptional(share) }),
  z.strictObject({ kind: z.literal('ohms'), element: point, ohms: positive }),
  z.strictObject({ kind: z.literal('drift'), element: point, factor: positive }),
  z.strictObject({ kind: z.literal('closed'), element: point }),
  z.strictObject({ kind: z.literal('bridge'), a: point, b: point, ohms: positive }),
  z.strictObject({
    kind: z.literal('chafe'),
    wire: id,
    at: share,
    to: point,
    toAt: z.exactOptional(share),
    ohms: positive,
  }),
  z.strictObject({ kind: z.literal('stuck'), region: point, state: id }),
  z.strictObject({
    kind: z.literal('battery'),
    element: point,
    openVolts: z.exactOptional(z.number()),
    ohms: z.exactOptional(positive),
  }),
  z.strictObject({
    kind: z.literal('alternator'),
    element: point,
    setVolts: z.exactOptional(positive),
    limitAmps: z.exactOptional(notNegative),
  }),
  z.strictObject({ kind: z.literal('quantity'), quantity: id, value: z.number() }),
]);
z.globalRegistry.add(change, { id: 'change' });

export type ChangeProof = Same<z.infer<typeof change>, Change>;

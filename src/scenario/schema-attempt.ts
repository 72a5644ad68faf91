/** The shape of an attempt's log, version 1. Whether it is true is for its replay to say. */
import * as z from 'zod/mini';
import type { Log } from '../job/index.ts';
import { id, type Same } from './schema-common.ts';
import { actionSchema } from './schema-job.ts';

const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));

const display = z.strictObject({
  text: z.string(),
  unit: z.string(),
  beep: z.exactOptional(z.boolean()),
  live: z.exactOptional(z.boolean()),
  from: z.exactOptional(z.string()),
  to: z.exactOptional(z.string()),
  least: z.exactOptional(z.string()),
  most: z.exactOptional(z.string()),
});

export const attemptFile = z.strictObject({
  header: z.strictObject({
    version: z.literal(1),
    engine: z.string(),
    book: hash,
    job: hash,
    jobId: id,
    seed: z.int(),
  }),
  entries: z.array(
    z.strictObject({
      index: z.int(),
      timeMs: z.int(),
      tenths: z.int(),
      price: z.number(),
      action: actionSchema,
      seen: z.strictObject({ display: z.exactOptional(display), codes: z.array(z.string()) }),
      previous: hash,
      hash,
    }),
  ),
});

export const attemptSchemaMatchesType: Same<z.infer<typeof attemptFile>, Log> = true;

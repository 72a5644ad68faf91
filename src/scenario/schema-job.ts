/** The shape of a job file. What it names must also stand in its machine's book: `read-job.ts` sees to that. */
import * as z from 'zod/mini';
import type { Action, JobSpec } from '../job/index.ts';
import type { Fault } from '../parts/index.ts';
import { type ChangeProof, change } from './schema-change.ts';
import { id, point, type Same, text } from './schema-common.ts';

const fault = z.strictObject({
  at: point,
  mode: id,
  changes: z.array(change),
  cures: z.array(id).check(z.minLength(1)),
});

const meterFunction = z.enum(['off', 'volts-dc', 'ohms', 'continuity', 'diode', 'amps', 'volts-lo']);

/** Every action of the log; also the steps of a job's own sound way. */
export const actionSchema = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('start') }),
  z.strictObject({ do: z.literal('ask'), question: id }),
  z.strictObject({ do: z.literal('walk'), zone: id }),
  z.strictObject({ do: z.literal('open'), access: id }),
  z.strictObject({ do: z.literal('close'), access: id }),
  z.strictObject({ do: z.literal('precaution'), id, on: z.boolean() }),
  z.strictObject({ do: z.literal('helper'), call: z.boolean() }),
  z.strictObject({
    do: z.literal('operate'),
    control: id,
    value: z.string(),
    holdMs: z.exactOptional(z.int().check(z.gte(500), z.lte(60_000))),
  }),
  z.strictObject({ do: z.literal('instrument'), take: z.enum(['meter', 'lamp']) }),
  z.strictObject({ do: z.literal('dial'), fn: meterFunction }),
  z.strictObject({ do: z.literal('jack'), red: z.enum(['volts', 'amps']) }),
  z.strictObject({ do: z.literal('range'), to: z.nullable(z.int().check(z.gte(0), z.lte(5))) }),
  z.strictObject({ do: z.literal('zero'), on: z.boolean() }),
  z.strictObject({ do: z.literal('minmax'), on: z.boolean() }),
  z.strictObject({ do: z.literal('renewFuse') }),
  z.strictObject({ do: z.literal('lead'), lead: z.enum(['red', 'black']), point: z.nullable(point) }),
  z.strictObject({ do: z.literal('read') }),
  z.strictObject({ do: z.literal('look'), at: point }),
  z.strictObject({ do: z.literal('wiggle'), at: point }),
  z.strictObject({ do: z.literal('codes') }),
  z.strictObject({ do: z.literal('clearCodes') }),
  z.strictObject({ do: z.literal('unplug'), connector: id }),
  z.strictObject({ do: z.literal('plug'), connector: id }),
  z.strictObject({ do: z.literal('lift'), end: point }),
  z.strictObject({ do: z.literal('land'), end: point }),
  z.strictObject({ do: z.literal('pull'), part: id }),
  z.strictObject({ do: z.literal('refit'), part: id }),
  z.strictObject({ do: z.literal('exchange'), part: id, with: id }),
  z.strictObject({ do: z.literal('repair'), verb: id, target: point }),
  z.strictObject({ do: z.literal('mark'), target: point, suspect: z.boolean() }),
  z.strictObject({ do: z.literal('note'), text: z.string().check(z.maxLength(2000)) }),
  z.strictObject({ do: z.literal('verify') }),
  z.strictObject({
    do: z.literal('writeUp'),
    complaint: z.string().check(z.maxLength(2000)),
    cause: z.string(),
    mode: z.string(),
    correction: z.string().check(z.maxLength(2000)),
  }),
  z.strictObject({
    do: z.literal('finish'),
    ending: z.enum(['repaired', 'no-fault', 'cannot-duplicate', 'not-safe', 'handed-on']),
  }),
]);

const symptom = z.strictObject({
  controls: z.array(z.tuple([id, z.string()])).check(z.minLength(1)),
  seen: z.array(id),
  missing: z.array(id),
});

export const jobFile = z.strictObject({
  $schema: z.string(),
  id,
  machine: id,
  title: text,
  band: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]),
  workOrder: z.strictObject({ hours: z.int().check(z.gte(0)), history: text, operatorSays: text, onArrival: text }),
  asks: z.array(z.strictObject({ id, question: text, answer: text })),
  arrival: z.strictObject({
    controls: z.exactOptional(z.record(id, z.string())),
    quantities: z.exactOptional(z.record(id, z.number())),
    regions: z.exactOptional(z.record(point, z.string())),
  }),
  faults: z.array(fault),
  signs: z.array(
    z.strictObject({
      at: point,
      zone: id,
      by: z.enum(['look', 'wiggle']),
      parted: z.exactOptional(id),
      under: z.exactOptional(id),
      of: z.exactOptional(point),
      text,
    }),
  ),
  complaint: z.array(symptom).check(z.minLength(1)),
  ending: z.enum(['repaired', 'no-fault', 'cannot-duplicate', 'not-safe', 'handed-on']),
  causes: z.array(z.strictObject({ at: point, mode: id })).check(z.minLength(1)),
  wrongSwap: id,
  path: z.array(actionSchema).check(z.minLength(1)),
  lesson: text,
});

/** Fails to compile when the schema and the types part ways. */
export const jobSchemasMatchTypes: [
  Same<z.infer<typeof actionSchema>, Action>,
  Same<z.infer<typeof fault>, Fault>,
  ChangeProof,
  Same<Omit<z.infer<typeof jobFile>, '$schema'>, JobSpec>,
] = [true, true, true, true];

/** A file of parts. Each kind of part has its own form; `kind` says which. */
import * as z from 'zod/mini';
import type { ElementSpec, FailureSpec, Law, PartSpec } from '../parts/index.ts';
import { change } from './schema-change.ts';
import { failure, guard, head, id, notNegative, point, positive, region, type Same, text } from './schema-common.ts';

const law = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('resistance'), ohms: positive, coldOhms: z.exactOptional(positive) }),
  z.strictObject({ kind: z.literal('variable'), quantity: id, scale: z.number(), offset: z.number() }),
  z.strictObject({ kind: z.literal('contact'), ohms: positive, openOhms: z.exactOptional(positive) }),
  z.strictObject({
    kind: z.literal('source'),
    volts: z.number(),
    ohms: positive,
    limitAmps: z.exactOptional(positive),
  }),
  z.strictObject({
    kind: z.literal('battery'),
    openVolts: positive,
    ohms: positive,
    chargeVolts: positive,
    chargeOhms: positive,
    capacityAh: positive,
  }),
  z.strictObject({ kind: z.literal('motor'), ohms: positive, voltsPerRpm: positive, freeRpm: positive }),
  z.strictObject({
    kind: z.literal('alternator'),
    setVolts: positive,
    limitAmps: positive,
    ceilingVolts: positive,
    sense: point,
  }),
  z.strictObject({ kind: z.literal('excitation'), ohms: positive, belowOutputVolts: notNegative, of: text }),
]);
z.globalRegistry.add(law, { id: 'law' });

const element = z.strictObject({
  id,
  a: point,
  b: point,
  law,
  when: z.exactOptional(guard),
  load: z.exactOptional(z.boolean()),
  note: z.exactOptional(text),
});
z.globalRegistry.add(element, { id: 'element' });

const elements = z.array(element);
const regions = z.array(region);

/** With what it does to the machine, where its kind doesn't say. */
const partFailure = z.extend(failure, {
  ways: z.exactOptional(z.array(z.array(change)).check(z.minLength(1))),
});

const base = {
  id,
  name: text,
  zone: id,
  access: id,
  terminals: z.array(id).check(z.minLength(1)),
  hidden: z.exactOptional(z.array(id)),
  price: z.nullable(notNegative),
  replaceMinutes: z.nullable(notNegative),
  replaceable: z.boolean(),
  failures: z.array(partFailure),
  signs: z.exactOptional(z.record(id, text)),
  note: z.exactOptional(text),
};

/** SPN 0 to 524287, FMI 0 to 31 (SAE J1939-73). */
const spn = z.int().check(z.gte(0), z.lte(524_287));
const fmi = z.int().check(z.gte(0), z.lte(31));
const code = z.strictObject({ code: id, spn, fmi, text, when: guard, afterMs: notNegative });

const controllerPin = z.strictObject({
  terminal: id,
  name: text,
  type: text,
  internal: z.exactOptional(text),
  thresholds: z.exactOptional(text),
  driverOhms: z.exactOptional(text),
  limit: z.exactOptional(text),
  logic: z.exactOptional(text),
  codes: z.exactOptional(text),
  cannotDetect: z.exactOptional(text),
});

const fuse = z.strictObject({
  ...base,
  kind: z.literal('fuse'),
  ratingAmps: positive,
  type: z.enum(['blade', 'bolt-in']),
  ohms: positive,
});

const relay = z.strictObject({
  ...base,
  kind: z.literal('relay'),
  coilOhms: positive,
  pullInVolts: positive,
  dropOutVolts: positive,
  contactOhms: positive,
  restContactOhms: z.exactOptional(positive),
  coil: z.tuple([id, id]),
  common: id,
  make: id,
  rest: z.exactOptional(id),
  type: text,
  bolted: z.exactOptional(z.boolean()),
});

const starter = z.strictObject({
  ...base,
  kind: z.literal('starter'),
  pullInAmps: positive,
  dropOutAmps: positive,
  elements,
});

const controller = z.strictObject({
  ...base,
  kind: z.literal('controller'),
  ground: id,
  pins: z.exactOptional(z.array(controllerPin)),
  elements,
  regions,
  codes: z.array(code),
});

const part = z.discriminatedUnion('kind', [
  fuse,
  relay,
  starter,
  z.strictObject({ ...base, kind: z.literal('switch'), elements }),
  controller,
  z.strictObject({ ...base, kind: z.literal('general'), symbol: id, elements, regions: z.exactOptional(regions) }),
]);

export const partsFile = z.strictObject({ $schema: head('parts'), parts: z.array(part) });

export type PartProofs = [
  Same<z.infer<typeof law>, Law>,
  Same<z.infer<typeof element>, ElementSpec>,
  Same<z.infer<typeof partFailure>, FailureSpec>,
  Same<z.infer<typeof part>, PartSpec>,
];

/** Files of the shop: access steps, precautions, costs, repairs, tools, service limits, the manual's words. */
import * as z from 'zod/mini';
import type {
  AccessSpec,
  CostSpec,
  LimitSpec,
  ManualSection,
  PrecautionSpec,
  RepairSpec,
  SafetyCheck,
  SafetyEvent,
  ToolSpec,
} from '../machine/book.ts';
import { guard, head, id, notNegative, point, positive, type Same, text } from './schema-common.ts';

const ids = z.array(id);

const access = z.strictObject({
  id,
  step: text,
  undo: text,
  openMinutes: notNegative,
  closeMinutes: notNegative,
  fasteners: z.string(),
  toOpen: ids,
  toOpenText: z.string(),
  toWork: ids,
  toWorkText: z.string(),
});

const event = z.enum(['crank', 'stud', 'disconnect', 'ohms', 'pull', 'unplug', 'open', 'walk', 'helper-moves']);

const precaution = z.strictObject({
  id,
  text,
  needs: z.nullable(guard),
  pulled: z.exactOptional(id),
  lifted: z.exactOptional(point),
  done: text,
  critical: z.boolean(),
  lapsesOn: z.exactOptional(z.array(event)),
  while: z.exactOptional(ids.check(z.minLength(1))),
  needsHelper: z.exactOptional(z.boolean()),
  removed: z.exactOptional(z.boolean()),
});

const check = z.strictObject({
  id,
  on: event,
  access: z.exactOptional(ids),
  zones: z.exactOptional(ids),
  at: z.exactOptional(z.array(point).check(z.minLength(1))),
  needs: z.array(z.array(id).check(z.minLength(1))).check(z.minLength(1)),
  critical: z.boolean(),
  why: text,
});

const limit = z.strictObject({
  kind: text,
  where: text,
  what: text,
  limit: text,
  condition: z.string(),
  from: z.exactOptional(point),
  to: z.exactOptional(point),
  minVolts: z.exactOptional(notNegative),
  maxVolts: z.exactOptional(positive),
  minOhms: z.exactOptional(notNegative),
  maxOhms: z.exactOptional(positive),
  part: z.exactOptional(id),
});

const repair = z.strictObject({
  id,
  name: text,
  minutes: notNegative,
  attendedMinutes: z.exactOptional(notNegative),
  price: notNegative,
  minutesFromPart: z.exactOptional(z.boolean()),
  priceFromPart: z.exactOptional(z.boolean()),
  appliesTo: text,
  effect: text,
});

const tool = z.strictObject({ id, name: text, effect: text, use: text });

const costs = z.strictObject({
  labourRate: notNegative,
  labourStepHours: positive,
  minutes: z.record(id, notNegative),
  walk: z.record(id, z.record(id, notNegative)),
});

const section = z.strictObject({ id, title: text, text, circuit: z.exactOptional(id) });

export const accessFile = z.strictObject({ $schema: head('access'), access: z.array(access) });
export const precautionsFile = z.strictObject({ $schema: head('precautions'), precautions: z.array(precaution) });
export const checksFile = z.strictObject({ $schema: head('checks'), checks: z.array(check) });
export const limitsFile = z.strictObject({ $schema: head('limits'), limits: z.array(limit) });
export const shopFile = z.strictObject({
  $schema: head('shop'),
  costs,
  repairs: z.array(repair),
  tools: z.array(tool),
});
export const manualFile = z.strictObject({ $schema: head('manual'), manual: z.array(section) });

export type ShopProofs = [
  Same<z.infer<typeof access>, AccessSpec>,
  Same<z.infer<typeof event>, SafetyEvent>,
  Same<z.infer<typeof precaution>, PrecautionSpec>,
  Same<z.infer<typeof check>, SafetyCheck>,
  Same<z.infer<typeof limit>, LimitSpec>,
  Same<z.infer<typeof repair>, RepairSpec>,
  Same<z.infer<typeof tool>, ToolSpec>,
  Same<z.infer<typeof costs>, CostSpec>,
  Same<z.infer<typeof section>, ManualSection>,
];

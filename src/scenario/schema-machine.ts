/** The machine's own file: places, harnesses, controls, quantities, regions of no part, engine. And what is noticed. */
import * as z from 'zod/mini';
import type { Book, InterlockSpec, ObservableSpec, StaircaseSpec } from '../machine/book.ts';
import { guard, head, id, notNegative, point, positive, region, type Same, text } from './schema-common.ts';

const zone = z.strictObject({ id, name: text, access: id });
const harness = z.strictObject({ id, name: text, zones: z.array(id).check(z.minLength(1)) });

const control = z.strictObject({
  id,
  name: text,
  part: id,
  values: z.array(id).check(z.minLength(2)),
  initial: id,
  labels: z.record(id, text),
  springs: z.exactOptional(z.record(id, id)),
  zone: id,
  surroundings: z.exactOptional(z.boolean()),
  starts: z.exactOptional(z.boolean()),
  disconnects: z.exactOptional(id),
});

const quantity = z.strictObject({ id, initial: z.number(), unit: text, text });

const engine = z.strictObject({
  starter: id,
  loadAmps: notNegative,
  loadAmpsPerRpm: notNegative,
  inertia: positive,
  idleRpm: positive,
  fires: guard,
  firesAfterMs: notNegative,
  keepsRunning: guard,
});

const gauge = z.strictObject({
  id,
  name: text,
  volts: z.tuple([point, point]),
  scale: z.array(z.tuple([z.number(), z.number().check(z.gte(0), z.lte(1))])).check(z.minLength(2)),
  when: z.exactOptional(guard),
});

const cluster = z.strictObject({
  part: id,
  zones: z.array(id).check(z.minLength(1)),
  on: guard,
  codesOf: z.array(z.strictObject({ part: id, when: z.exactOptional(guard) })),
  gauges: z.array(gauge),
  speed: z.strictObject({ when: guard, measured: guard }),
  hourMeter: id,
});

export const machineFile = z.strictObject({
  $schema: head('machine'),
  id,
  name: text,
  title: text,
  reference: point,
  zones: z.array(zone).check(z.minLength(1)),
  cab: z.array(id).check(z.minLength(1)),
  seat: z.strictObject({ control: id, occupied: id, empty: id, tiltedBy: id }),
  harnesses: z.array(harness),
  controls: z.array(control),
  quantities: z.array(quantity),
  regions: z.array(region),
  engine,
  cluster: z.exactOptional(cluster),
});

const observable = z.strictObject({
  code: id,
  text,
  zones: z.array(id),
  when: guard,
  kind: z.enum(['seen', 'heard']),
  between: z.exactOptional(guard),
  lamp: z.exactOptional(z.strictObject({ id, name: text })),
});

const interlock = z.strictObject({
  id,
  text,
  controls: z.array(z.tuple([id, id])).check(z.minLength(1)),
  seen: z.array(id),
  missing: z.array(id),
});

export const observablesFile = z.strictObject({
  $schema: head('observables'),
  observables: z.array(observable),
  interlocks: z.array(interlock),
});

const staircase = z.strictObject({
  id,
  title: text,
  controls: z.array(z.tuple([id, text])),
  black: point,
  points: z.array(point).check(z.minLength(2)),
});

export const staircasesFile = z.strictObject({ $schema: head('staircases'), staircases: z.array(staircase) });

export type MachineProofs = [
  Same<Omit<z.infer<typeof machineFile>, '$schema'>, Pick<Book, Exclude<keyof z.infer<typeof machineFile>, '$schema'>>>,
  Same<z.infer<typeof observable>, ObservableSpec>,
  Same<z.infer<typeof interlock>, InterlockSpec>,
  Same<z.infer<typeof staircase>, StaircaseSpec>,
];

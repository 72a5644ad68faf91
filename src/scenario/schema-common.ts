/** Words that all schemas of a book share: names, amounts, guards, regions. */
import * as z from 'zod/mini';
import type { Delay, FailureSpec, Guard, RegionSpec, TransitionSpec } from '../parts/index.ts';

export const text = z.string().check(z.minLength(1));
/** An id without dots and blanks, since ids are joined by dots. */
export const id = z.string().check(z.regex(/^[^\s.]+$/));
/** `X7.3.a`, `GND1.L`, `SP6`, `206D@to`. */
export const point = z.string().check(z.regex(/^\S+$/));
export const positive = z.number().check(z.positive());
export const notNegative = z.number().check(z.nonnegative());

/** The head of a file: a path to the JSON Schema of its kind, however the folders lie. */
export const head = (kind: string) => z.string().check(z.regex(new RegExp(`(^|/)${kind}\\.schema\\.json$`)));

/** `A` and `B` accept each other: the schema and the type that the engine uses are the same. */
export type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : false) : false;

const bounds = { above: z.exactOptional(z.number()), below: z.exactOptional(z.number()) };
const pair = z.tuple([point, point]);

const leafGuard = z.union([
  z.strictObject({ volts: pair, ...bounds }),
  z.strictObject({ amps: z.array(text).check(z.minLength(1)), ...bounds }),
  z.strictObject({ ohms: pair, ...bounds }),
  z.strictObject({ region: text, is: z.array(text).check(z.minLength(1)) }),
  z.strictObject({ control: id, is: z.array(text).check(z.minLength(1)) }),
  z.strictObject({ quantity: text, ...bounds }),
]);

export const guard: z.ZodMiniType<Guard> = z.lazy(() =>
  z.union([
    z.strictObject({ all: z.array(guard) }),
    z.strictObject({ any: z.array(guard) }),
    z.strictObject({ not: guard }),
    ...leafGuard.def.options,
  ]),
);
z.globalRegistry.add(guard, { id: 'guard' });

const curvePoint = z.tuple([positive, positive]);
const delay = z.union([
  notNegative,
  z.strictObject({ element: text, ratingAmps: positive, curve: z.array(curvePoint).check(z.minLength(2)) }),
]);

const transition = z.strictObject({ from: id, to: id, when: guard, afterMs: z.exactOptional(delay) });

export const region = z.strictObject({
  id: text,
  states: z.array(id).check(z.minLength(2)),
  initial: id,
  transitions: z.array(transition),
});
z.globalRegistry.add(region, { id: 'region' });

export const failure = z.strictObject({ mode: id, weight: positive });

export type SharedProofs = [
  Same<z.infer<typeof leafGuard>, Exclude<Guard, { all: Guard[] } | { any: Guard[] } | { not: Guard }>>,
  Same<z.infer<typeof delay>, Delay>,
  Same<z.infer<typeof transition>, TransitionSpec>,
  Same<z.infer<typeof region>, RegionSpec>,
  Same<z.infer<typeof failure>, Omit<FailureSpec, 'ways'>>,
];

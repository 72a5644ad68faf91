/** The layout of a schematic sheet: which current path stands in which column. What is on the path, the book says. */
import * as z from 'zod/mini';

const point = z.string().check(z.minLength(2));

const pathSchema = z.strictObject({
  /** Points where the path starts and ends, and those that it must pass in this order. */
  from: point,
  to: point,
  via: z._default(z.array(point), []),
  /** Shift from the middle of the track, units. */
  dx: z._default(z.number(), 0),
  /** The last wire turns at the foot and climbs in this track. */
  climb: z.optional(z.int().check(z.positive())),
});

const trackSchema = z.strictObject({
  title: z.string(),
  paths: z.array(pathSchema),
  /** Width of the column, units; the sheet's pitch if it isn't given. */
  width: z.optional(z.number()),
});

const railSchema = z.strictObject({
  point,
  name: z.string(),
  kind: z.enum(['feed', 'ground']),
  label: z.optional(z.string()),
  /** Track under which the point itself is shown; the first that uses the rail if it isn't given. */
  at: z.optional(z.int()),
});

export const sheetSchema = z.strictObject({
  $schema: z.optional(z.string()),
  id: z.string(),
  number: z.int().check(z.positive()),
  title: z.string(),
  /** Column width, units. */
  pitch: z._default(z.number(), 104),
  rails: z.array(railSchema),
  tracks: z.array(trackSchema),
  /** Wires from rail to rail. */
  ties: z._default(z.array(z.string()), []),
  /** Points joined inside a device, drawn as a line between their columns. */
  links: z._default(z.array(z.tuple([point, point])), []),
  /** Points that stand side by side. */
  levels: z._default(z.array(z.array(point)), []),
  /** Heights that are fixed, units from the top. */
  rows: z._default(z.record(z.string(), z.number()), {}),
  /** Least height of the ground rail, units from the top. */
  ground: z._default(z.number(), 738),
  /** Points that another sheet has; here they are only referred to. */
  elsewhere: z._default(z.array(point), []),
  /** Values of controls in which contacts are drawn. */
  rest: z._default(z.record(z.string(), z.string()), {}),
  restText: z._default(z.string(), ''),
  /** What moves a switch's contacts, by part. */
  actuators: z._default(z.record(z.string(), z.enum(['key', 'handle', 'lever', 'plunger', 'pedal'])), {}),
  /** One or two words below a part's designation. */
  captions: z._default(z.record(z.string(), z.string()), {}),
});

export type SheetSpec = z.infer<typeof sheetSchema>;
export type SheetPath = SheetSpec['tracks'][number]['paths'][number];
export type SheetRail = SheetSpec['rails'][number];

/** A log as a file: written for download, read back with a clear word on what is wrong with it. */
import * as z from 'zod/mini';
import type { Log } from '../job/index.ts';

const entrySchema = z.object({
  index: z.number(),
  timeMs: z.number(),
  tenths: z.number(),
  price: z.number(),
  action: z.looseObject({ do: z.string() }),
  seen: z.object({ display: z.optional(z.looseObject({ text: z.string(), unit: z.string() })), codes: z.array(z.string()) }),
  previous: z.string(),
  hash: z.string(),
});

const logSchema = z.object({
  header: z.object({
    version: z.literal(1),
    engine: z.string(),
    book: z.string(),
    job: z.string(),
    jobId: z.string(),
    seed: z.number(),
  }),
  entries: z.array(entrySchema),
});

export type LogResult = { ok: true; log: Log } | { ok: false; path: string; found: string };

export const logText = (log: Log): string => `${JSON.stringify(log, null, 1)}\n`;

/** Shape only; what the actions claim is proved by replaying them. */
export function readLog(text: string): LogResult {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { ok: false, path: '', found: text.slice(0, 40) };
  }
  const result = logSchema.safeParse(value);
  if (result.success) return { ok: true, log: result.data as Log };
  const issue = result.error.issues[0];
  return { ok: false, path: issue?.path.join('.') ?? '', found: issue?.message ?? '' };
}

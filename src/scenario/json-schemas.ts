/** JSON Schemas of our files, for editors and for authors without our code. Made from the schemas that the reader uses. */
import * as z from 'zod/mini';
import { attemptFile } from './schema-attempt.ts';
import { BOOK_SCHEMAS } from './schema-index.ts';
import { jobFile } from './schema-job.ts';
import { sheetSchema } from './schema-sheet.ts';

const ALL: Record<string, z.core.$ZodType> = {
  ...BOOK_SCHEMAS,
  sheet: sheetSchema,
  job: jobFile,
  attempt: attemptFile,
};

/** Text of each schema file by its name, `parts.schema.json`, as it is kept under `scenarios/schemas`. */
export function jsonSchemaFiles(): Record<string, string> {
  const files: Record<string, string> = {};
  for (const [name, schema] of Object.entries(ALL)) {
    const json = z.toJSONSchema(schema, { io: 'input' });
    files[`${name}.schema.json`] = `${JSON.stringify(json, null, 2)}\n`;
  }
  return files;
}

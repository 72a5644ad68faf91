import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { jsonSchemaFiles } from '../scenario/json-schemas.ts';
import { SCENARIOS } from './library.ts';

/** Writes the JSON Schemas that editors use beside the data. */
export function schemas(): number {
  const dir = join(SCENARIOS, 'schemas');
  mkdirSync(dir, { recursive: true });
  for (const [name, text] of Object.entries(jsonSchemaFiles())) writeFileSync(join(dir, name), text);
  return 0;
}

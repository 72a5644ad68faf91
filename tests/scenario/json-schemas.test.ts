import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { jsonSchemaFiles } from '../../src/scenario/json-schemas.ts';

test.each(Object.entries(jsonSchemaFiles()))('scenarios/schemas/%s is what the reader checks', (name, text) => {
  const kept = readFileSync(join('scenarios/schemas', name), 'utf8');
  expect(kept, 'run `npm run schemas`').toBe(text);
});

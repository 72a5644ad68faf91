/** Reading of arguments with the platform's own parser; a wrong one is the caller's error, not ours. */
import { type ParseArgsConfig, parseArgs } from 'node:util';

export class Usage extends Error {}

export function parse<T extends NonNullable<ParseArgsConfig['options']>>(args: string[], options: T) {
  try {
    return parseArgs({ args, options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new Usage(error instanceof Error ? error.message : String(error));
  }
}

/** `key=start` as a pair. */
export function pairOf(text: string): [string, string] {
  const at = text.indexOf('=');
  if (at <= 0) throw new Usage(`expected CONTROL=VALUE, found ${text}`);
  return [text.slice(0, at), text.slice(at + 1)];
}

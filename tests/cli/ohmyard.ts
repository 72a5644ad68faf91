/** The command line as a shell runs it. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ownWay } from '../job/at-work.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

export interface Ran {
  status: number | null;
  out: string;
  err: string;
}

export function ohmyard(...args: string[]): Ran {
  const ran = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return { status: ran.status, out: ran.stdout, err: ran.stderr };
}

const folder = mkdtempSync(join(tmpdir(), 'ohmyard-'));

/** A file in a folder of its own under the system's place for such. */
export function fileWith(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

/** The log of a job's own sound way, as a file; changed first where something is to be wrong with it. */
export function attemptFile(
  name: string,
  job: string,
  edit: (log: ReturnType<typeof ownWay>['log']) => void = () => {},
) {
  const log = structuredClone(ownWay(job).log);
  edit(log);
  return fileWith(name, log);
}

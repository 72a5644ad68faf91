/** Finds a Chromium for the browser tests, or gets one. Fails loudly when there is none: a skipped test proves nothing. */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'msedge', 'microsoft-edge'];
const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/snap/bin/chromium'];
const PACKAGE = '@sparticuz/chromium';

function works(path: string): boolean {
  return existsSync(path) && spawnSync(path, ['--version'], { timeout: 30_000 }).status === 0;
}

/** A browser that is there already: the one that the environment names, or one on the path. */
export function findBrowser(): string | null {
  const named = process.env.CHROMIUM_PATH;
  if (named !== undefined && named !== '') {
    if (works(named)) return named;
    throw new Error(`CHROMIUM_PATH is ${named}, and that does not run`);
  }
  const onPath = NAMES.map((name) => spawnSync('which', [name], { encoding: 'utf8' }).stdout?.trim() ?? '');
  return [...PLACES, ...onPath].find((path) => path !== '' && works(path)) ?? null;
}

const isDebian = (): boolean =>
  existsSync('/etc/os-release') && /debian|ubuntu/i.test(readFileSync('/etc/os-release', 'utf8'));

function install(): void {
  const run = (command: string, args: string[]): void => {
    execFileSync(command, args, { stdio: 'inherit' });
  };
  if (isDebian() && process.getuid?.() === 0) {
    console.log('No Chromium found. Installing the one of Debian: apt-get install -y chromium');
    run('apt-get', ['update']);
    run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium']);
    return;
  }
  console.log(`No Chromium found. Getting one from the npm registry: ${PACKAGE}`);
  run('npm', ['install', '--no-save', PACKAGE]);
}

/** The unpacked browser of the npm package, if that is installed. */
async function packaged(): Promise<string | null> {
  try {
    const file = createRequire(import.meta.url).resolve(PACKAGE);
    const module: { default: { executablePath(): Promise<string> } } = await import(pathToFileURL(file).href);
    const path = await module.default.executablePath();
    return works(path) ? path : null;
  } catch {
    return null;
  }
}

export async function browserPath(): Promise<string> {
  const there = findBrowser() ?? (await packaged());
  if (there !== null) return there;
  install();
  const got = findBrowser() ?? (await packaged());
  if (got === null) throw new Error('No browser for the tests. Install Chromium, or set CHROMIUM_PATH to one.');
  return got;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  console.log(`Browser for the tests: ${await browserPath()}`);
}

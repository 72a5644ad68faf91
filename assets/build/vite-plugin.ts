/** Keeps the built drawings current: before a build, and while the development server runs. */
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { SOURCES, writeDrawings, writeWhenStale } from './drawings.ts';

export function drawings(): Plugin {
  const project = fileURLToPath(new URL('../..', import.meta.url));
  return {
    name: 'ohmyard-drawings',
    // The sources lie beside the page's root, where the server does not look by itself.
    config: () => ({ server: { fs: { allow: [project] } } }),
    buildStart: () => writeWhenStale(),
    configureServer(server) {
      server.watcher.add(SOURCES);
      server.watcher.on('change', (file) => {
        if (file.startsWith(SOURCES) && (file.endsWith('.svg') || file.endsWith('rules.json'))) writeDrawings();
      });
    },
  };
}

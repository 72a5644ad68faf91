import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { phaserParts } from './assets/build/phaser-parts.ts';
import { drawings } from './assets/build/vite-plugin.ts';

/** The development server puts styles inline; the built page, which is what is tested and used, keeps its policy. */
const openWhileDeveloping = (): Plugin => ({
  name: 'ohmyard-development-policy',
  apply: 'serve',
  transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, ''),
});

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: false,
  plugins: [drawings(), phaserParts(), openWhileDeveloping()],
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 2000,
    // The book and the jobs change without the code, and the code without them.
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'book', test: /scenarios[\\/].*\.json$/ }] } } },
  },
  preview: { port: 4173 },
  worker: { format: 'es' },
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          root: '.',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          environment: 'node',
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          root: '.',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          testTimeout: 180_000,
          hookTimeout: 180_000,
          fileParallelism: false,
        },
      },
    ],
  },
});

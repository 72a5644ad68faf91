import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: false,
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 2000 },
  preview: { port: 4173 },
  worker: { format: 'es' },
  test: {
    projects: [
      { test: { name: 'unit', root: '.', include: ['tests/**/*.test.ts'], exclude: ['tests/browser/**'], environment: 'node', testTimeout: 60_000 } },
      { test: { name: 'browser', root: '.', include: ['tests/browser/**/*.test.ts'], environment: 'node', testTimeout: 180_000, hookTimeout: 180_000, fileParallelism: false } },
    ],
  },
});

import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/editor/node_modules/**'],
    testTimeout: process.env.CI ? 180_000 : 30_000,
    hookTimeout: process.env.CI ? 180_000 : 60_000,
    maxWorkers: 2,
    // A browser on a busy machine may miss a moment; what is really broken fails twice.
    retry: process.env.CI ? 1 : 0,
  },
});

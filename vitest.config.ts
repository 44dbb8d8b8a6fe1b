import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('.', import.meta.url)) } },
  test: {
    include: ['test/**/*.test.ts'],
    env: { TZ: 'UTC' },
    testTimeout: 30_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // Asked for with --coverage, on the tests of the formulas alone: every branch of lib/calc is taken.
    coverage: {
      include: ['lib/calc/**'],
      thresholds: { branches: 100 },
      reporter: ['text-summary'],
      reportsDirectory: 'out/coverage',
    },
  },
})

import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

/** Rooms whose tests leave nothing behind in a module: their files share one, instead of loading the program anew for each. */
const SHARING = ['audit', 'calc', 'commands', 'demo', 'desk', 'domain', 'evidence', 'rules', 'style'].map(
  (room) => `test/${room}/**/*.test.ts`,
)

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('.', import.meta.url)) } },
  test: {
    env: { TZ: 'UTC' },
    testTimeout: 30_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    projects: [
      { extends: true, test: { name: 'sharing', include: SHARING, isolate: false } },
      { extends: true, test: { name: 'alone', include: ['test/**/*.test.ts'], exclude: SHARING } },
    ],
    // Asked for with --coverage, on the tests of the formulas alone: every branch of lib/calc is taken.
    coverage: {
      include: ['lib/calc/**'],
      thresholds: { branches: 100 },
      reporter: ['text-summary'],
      reportsDirectory: 'out/coverage',
    },
  },
})

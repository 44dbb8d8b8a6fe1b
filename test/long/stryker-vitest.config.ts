import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

/** The tests that mutation testing runs against changed formulas: those of lib/calc alone, one worker. */
export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('../..', import.meta.url)) } },
  test: {
    root: fileURLToPath(new URL('../..', import.meta.url)),
    include: ['test/calc/*.test.ts'],
    env: { TZ: 'UTC', UNDERWRAP_RUNS: '12' },
    maxWorkers: 1,
    pool: 'threads',
    isolate: false,
  },
})

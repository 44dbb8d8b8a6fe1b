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
  },
})

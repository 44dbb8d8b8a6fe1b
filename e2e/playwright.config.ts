import { defineConfig } from '@playwright/test'
import { DEMO_PORT, DEMO_URL, E2E_PORT, E2E_URL } from './places'

/** Too long together for each change: every screen and form, and journeys of many minutes. `npm run test:long` runs them, with E2E_LONG=1. */
const LONG = [
  'accept-offline',
  'access',
  'decide-offline',
  'device-keys',
  'hands',
  'keyboard-fill',
  'keyboard-forms',
  'open-offline',
  'over-https',
  'paper-offline',
  'site-hands',
  'tally',
  'two-devices',
].map((name) => `**/${name}.spec.ts`)

const server = {
  cwd: '..',
  timeout: 240_000,
  reuseExistingServer: process.env.E2E_REUSE === '1',
  gracefulShutdown: { signal: 'SIGTERM', timeout: 15_000 },
} as const

export default defineConfig({
  testDir: '.',
  testMatch: process.env.E2E_LONG === '1' ? LONG : '**/*.spec.ts',
  testIgnore: process.env.E2E_LONG === '1' ? [] : LONG,
  workers: 1,
  fullyParallel: false,
  timeout: 300_000,
  expect: { timeout: 15_000 },
  use: {
    baseURL: E2E_URL,
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    actionTimeout: 15_000,
    navigationTimeout: 30_000,
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
      args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
    },
  },
  outputDir: '../test-results',
  webServer: [
    {
      ...server,
      command: 'node --import tsx e2e/serve-for-tests.ts',
      url: `${E2E_URL}/sign-in`,
      env: { PORT: String(E2E_PORT) },
    },
    {
      ...server,
      command: 'node --import tsx e2e/serve-demo.ts',
      url: `${DEMO_URL}/sign-in`,
      env: { PORT: String(DEMO_PORT) },
    },
  ],
})

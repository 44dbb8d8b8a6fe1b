import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** Where the server of the browser tests answers. */
export const E2E_PORT = Number(process.env.E2E_PORT ?? 3217)
export const E2E_URL = `http://localhost:${E2E_PORT}`
/** The moment that server and pages take as now; tests write it. */
export const CLOCK_FILE = join(tmpdir(), `underwrap-e2e-clock-${E2E_PORT}`)
/** The demonstration, served beside it. */
export const DEMO_PORT = E2E_PORT + 1
export const DEMO_URL = `http://localhost:${DEMO_PORT}`

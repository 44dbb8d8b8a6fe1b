import { spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DEMO_PORT } from './places'

/** The demonstration in a store of its own, served as `npm run demo` serves it. */
const dataDir = mkdtempSync(join(tmpdir(), 'underwrap-e2e-demo-'))
chmodSync(dataDir, 0o755)
const child = spawn(process.execPath, ['--import', 'tsx', 'lib/cli/serve.ts', 'demo'], {
  stdio: 'inherit',
  env: { ...process.env, UNDERWRAP_DATA: dataDir, PORT: String(DEMO_PORT), DATABASE_URL: '' },
})
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal))
child.on('close', (code) => {
  rmSync(dataDir, { recursive: true, force: true })
  process.exit(code ?? 1)
})

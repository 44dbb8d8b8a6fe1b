import { spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openStore } from '@/lib/server/store/open-store'
import { CLOCK_FILE, E2E_PORT } from './places'
import { prepareStore } from './prepare-store'

/** A store of its own with people, instruments, batches, specifications and plans, and the built app serving it on a test clock. */
const dataDir = mkdtempSync(join(tmpdir(), 'underwrap-e2e-'))
chmodSync(dataDir, 0o755)
writeFileSync(CLOCK_FILE, '2026-05-18T07:30:00+01:00')
const store = await openStore({ dataDir, now: () => '2026-05-18T07:30:00+01:00' })
try {
  await prepareStore(store)
} finally {
  await store.close()
}
const child = spawn(process.execPath, ['--import', 'tsx', 'lib/cli/serve.ts', 'test', '--test-clock', CLOCK_FILE], {
  stdio: 'inherit',
  env: { ...process.env, UNDERWRAP_DATA: dataDir, PORT: String(E2E_PORT), DATABASE_URL: '' },
})
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal))
child.on('close', (code) => {
  rmSync(dataDir, { recursive: true, force: true })
  process.exit(code ?? 1)
})

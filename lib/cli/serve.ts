import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { makeSetupCode, needsSetup } from '@/lib/server/auth/setup-code'
import { runJobs } from '@/lib/server/jobs/run-jobs'
import { taskTable } from '@/lib/server/jobs/task-table'
import { baseUrl } from '@/lib/server/runtime/base-url'
import { markAsTestStore } from '@/lib/server/store/clock'
import { openStore } from '@/lib/server/store/open-store'
import { lineOf, PlainError } from './plain-error'
import { reachLines } from './reach-lines'
import { runWebServer } from './run-web-server'
import { secureSettingsOf } from './secure-settings'
import { seedIfEmpty, showSignIns } from './seed-if-empty'

/**
 * Host of a built app: holds the database while `next start` runs, behind our own TLS where a certificate is given. `demo` seeds an empty store and prints who can sign in; `real` prints the
 * one-time setup code of an empty store; `test` marks an empty store as one for tests, which alone takes `--test-clock FILE`.
 */
async function serve(): Promise<number> {
  const { values, positionals } = parseArgs({
    args: process.argv.slice(2),
    allowPositionals: true,
    options: { 'test-clock': { type: 'string' }, seed: { type: 'boolean' } },
    strict: true,
  })
  const [mode] = positionals
  if (mode !== 'demo' && mode !== 'real' && mode !== 'test')
    throw new PlainError('Say what to serve: demo, real or test')
  const testClock = values['test-clock']
  if ((testClock || process.env.UNDERWRAP_TEST_CLOCK) && mode !== 'test')
    throw new PlainError('--test-clock is refused: this start is not one for tests.')
  const port = process.env.PORT || '3000'
  const secure = secureSettingsOf(process.env)
  const store = await openStore()
  try {
    if (mode === 'test') await markAsTestStore(store.db)
    if (mode === 'demo' || values.seed) await seedIfEmpty(store)
    if (testClock) {
      process.env.UNDERWRAP_TEST_CLOCK = resolve(testClock)
      await store.readClock()
    }
    const lines = [
      `Underwrap: ${baseUrl()}`,
      ...reachLines({ tls: secure?.tls ?? null, port, url: process.env.UNDERWRAP_URL, nowMs: Date.now() }),
    ]
    if (mode === 'demo') lines.push(...showSignIns())
    if (mode === 'real' && (await needsSetup(store.db.queries))) {
      const code = await makeSetupCode(store.db.queries)
      if (code) lines.push(`The store is empty. Open ${baseUrl()}/setup and enter this one-time code: ${code}`)
    }
    const jobs = await runJobs(store, taskTable)
    try {
      return await runWebServer({ port, secure, whenReady: () => process.stdout.write(`${lines.join('\n')}\n`) })
    } finally {
      await jobs.stop()
    }
  } finally {
    await store.close()
  }
}

try {
  process.exitCode = await serve()
} catch (cause) {
  process.stderr.write(`underwrap: ${lineOf(cause)}\n`)
  process.exitCode = 1
}
